import { stillStack, type ThemeName } from '@pullbook/charts';
import type { PresentedStep } from '@pullbook/views/publish';
import { type PointerEvent, useMemo, useRef } from 'react';
import type { Pictures } from '../../canvas/paint-scene.ts';
import { nodeAt } from '../../chart/node-at.ts';
import { chartOf } from './chart-of.ts';
import { Figures } from './Figures.tsx';
import { Hairs } from './Hairs.tsx';
import { pictureSize } from './picture-size.ts';
import styles from './present.module.css';
import type { PresentAct, PresentState } from './present-state.ts';
import { meantBy } from './touch.ts';
import { useDrawnStep } from './use-drawn-step.ts';
import { NEAR_PX } from './use-rest.ts';
import { useSize } from './use-size.ts';

/** What stands right over the curves, their quantity and unit, in heights of text. */
const TITLE_EM = 1.7;
/** A finger that rests this long on the curves points at them, ms. */
const REST_MS = 250;

/** One step on its canvas, with what is pointed at over it. */
export function Stage({
  step,
  state,
  theme,
  pictures,
  act,
}: {
  step: PresentedStep;
  state: PresentState;
  theme: ThemeName;
  pictures: Pictures | null;
  act: (act: PresentAct) => void;
}) {
  const [box, size] = useSize<HTMLDivElement>();
  const canvas = useRef<HTMLCanvasElement>(null);
  const { width, height } = size;
  const table = step.cursor;
  const chart = chartOf(step.still);
  const picture = useMemo(() => pictureSize({ width, height }), [width, height]);
  const stack = useMemo(
    () => (width === 0 || height === 0 ? null : stillStack(step.still, { ...picture, theme, ground: true })),
    [step, width, height, picture, theme],
  );
  useDrawnStep(canvas, step, state.drawing, size, picture, theme, pictures);

  /** The speed under a place of the stage; `null`: no curves there. */
  function speedAt(x: number, y: number): number | null {
    if (stack === null || table === null || table.at.length === 0) return null;
    const { geometry } = stack;
    const slack = 0.02 * picture.width;
    const isOver =
      x > geometry.left - slack &&
      x < geometry.right + slack &&
      y > geometry.top - slack &&
      y < geometry.bottom + slack;
    return isOver ? table.at[nodeAt(x, geometry, table.at)]! : null;
  }
  const placeOf = (event: PointerEvent<HTMLDivElement>) => {
    const edge = event.currentTarget.getBoundingClientRect();
    return { x: event.clientX - edge.left, y: event.clientY - edge.top };
  };
  const point = ({ x, y }: { x: number; y: number }) =>
    act({ kind: 'point', at: speedAt((x / width) * picture.width, (y / height) * picture.height) });

  const finger = useRef<{ from: { x: number; y: number }; at: number } | null>(null);
  const isPointing = (event: PointerEvent<HTMLDivElement>) =>
    finger.current !== null && event.timeStamp - finger.current.at > REST_MS;

  function press(event: PointerEvent<HTMLDivElement>) {
    // At the lower edge a finger calls the buttons.
    if (event.pointerType === 'mouse' || event.clientY > innerHeight - NEAR_PX) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    finger.current = { from: placeOf(event), at: event.timeStamp };
  }
  function move(event: PointerEvent<HTMLDivElement>) {
    if (event.pointerType === 'mouse' || isPointing(event)) point(placeOf(event));
  }
  function lift(event: PointerEvent<HTMLDivElement>) {
    if (finger.current === null) return;
    const { from } = finger.current;
    const to = placeOf(event);
    const meant = isPointing(event) ? 'point' : meantBy({ from, to, stageWidth: width });
    finger.current = null;
    if (meant === 'point') point(to);
    else if (meant !== null) act({ kind: 'step', by: meant === 'next' ? 1 : -1 });
  }

  const places = [
    ...state.held,
    ...(state.pointer === null || state.held.includes(state.pointer) ? [] : [state.pointer]),
  ];
  const roomAbove =
    stack === null ? 0 : ((stack.geometry.top - TITLE_EM * stack.text) / picture.height) * height;
  const ratio = window.devicePixelRatio || 1;
  return (
    <div
      ref={box}
      className={styles.stage}
      onPointerDown={press}
      onPointerMove={move}
      onPointerUp={lift}
      onPointerCancel={() => {
        finger.current = null;
      }}
      onPointerLeave={(event) => event.pointerType === 'mouse' && act({ kind: 'point', at: null })}
    >
      <canvas
        ref={canvas}
        className={styles.canvas}
        width={Math.max(1, Math.round(width * ratio))}
        height={Math.max(1, Math.round(height * ratio))}
        role="img"
        aria-label={
          step.still.alternative === ''
            ? step.still.headline
            : `${step.still.headline}. ${step.still.alternative}`
        }
      />
      {stack !== null && chart !== null && table !== null && places.length > 0 && (
        <>
          <Hairs
            chart={chart}
            stack={stack}
            places={places}
            picture={picture}
            theme={theme}
            roomAbove={roomAbove}
          />
          <Figures
            chart={chart}
            table={table}
            places={places}
            state={state}
            size={size}
            roomAbove={roomAbove}
          />
        </>
      )}
    </div>
  );
}
