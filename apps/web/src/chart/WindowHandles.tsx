import { type DrawSize, drawMarkedRange, placeAcross, type StackGeometry } from '@pullbook/charts';
import { type PointerEvent, useEffect, useEffectEvent, useRef, useState } from 'react';
import { windowSteps } from '../keys/cursor-keys.ts';
import styles from './chart.module.css';
import { nearest } from './nearest.ts';
import { nodeAt } from './node-at.ts';
import { SceneElements } from './SceneElements.tsx';

/** A window on a chart whose ends can be set. */
export interface ChartWindow {
  /** `Averages`, `Counted` */
  name: string;
  /** Now, on the chart's axis. */
  range: readonly [number, number];
  /** Where its ends can be set, ascending. */
  places: readonly number[];
  /** An end in words: `4,000 rpm`. */
  text: (place: number) => string;
  /** Another one lets go of what was moved and not kept. */
  turn?: number;
  /** Set while the hand moves, each time the last one is there; else once it lets go or the keys rest. */
  live?: boolean;
  onSet: (lowPlace: number, highPlace: number) => void;
}

/** Keys come in runs: what they set takes effect once they rest, where it is kept. */
const REST_MS = 450;
/** An answer that takes longer is not waited for before the next is asked. */
const PATIENCE_MS = 1000;

type Ends = [low: number, high: number];

/** The two ends of a window as handles: dragged, or moved by arrow keys, from place to place. */
export function WindowHandles({
  window: { name, range, places, text, turn = 0, live = false, onSet },
  geometry,
  size,
}: {
  window: ChartWindow;
  geometry: StackGeometry;
  size: DrawSize;
}) {
  const rangeKey = [...range, turn].join(' ');
  const [moved, setMoved] = useState<{ from: string; ends: Ends; inHand: boolean } | null>(null);
  const pressed = useRef(false);
  const askedAt = useRef(Number.NEGATIVE_INFINITY);
  const resting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => () => clearTimeout(resting.current), []);

  // What is in the hand stays there, even where the window changes meanwhile.
  const own = moved !== null && (moved.inHand || moved.from === rangeKey) ? moved : null;
  const ends: Ends = own?.ends ?? [nearest(places, range[0]), nearest(places, range[1])];

  const withEnd = (side: 0 | 1, wanted: number): Ends =>
    side === 0
      ? [Math.max(0, Math.min(wanted, ends[1] - 1)), ends[1]]
      : [ends[0], Math.min(places.length - 1, Math.max(wanted, ends[0] + 1))];

  const keep = (next: Ends) => {
    askedAt.current = performance.now();
    onSet(next[0], next[1]);
  };
  const isThere = (wanted: Ends) => wanted.every((end, side) => end === nearest(places, range[side]!));

  /** One question at a time, so that no queue of them builds up behind a quick hand. */
  function lookAt(next: Ends) {
    setMoved({ from: rangeKey, ends: next, inHand: true });
    if (performance.now() - askedAt.current > PATIENCE_MS) keep(next);
  }

  // What was asked is there: the next one, if the hand has moved on meanwhile.
  const onAnswer = useEffectEvent(() => {
    askedAt.current = Number.NEGATIVE_INFINITY;
    if (!live || own === null) return;
    if (!isThere(own.ends)) keep(own.ends);
    else if (!pressed.current) setMoved(null);
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: another range is what it waits for
  useEffect(() => onAnswer(), [rangeKey]);

  function drag(side: 0 | 1, event: PointerEvent<HTMLDivElement>) {
    if (own === null || !pressed.current) return;
    const box = event.currentTarget.parentElement!.getBoundingClientRect();
    const next = withEnd(side, nodeAt(event.clientX - box.left, geometry, places));
    if (live && next[side] !== own.ends[side]) lookAt(next);
    else setMoved({ from: rangeKey, ends: next, inHand: true });
  }

  function release() {
    if (own === null || !pressed.current) return;
    pressed.current = false;
    if (isThere(own.ends)) setMoved(null);
    else {
      setMoved({ from: rangeKey, ends: own.ends, inHand: live });
      keep(own.ends);
    }
  }

  const handle = (side: 0 | 1) => {
    const place = places[ends[side]]!;
    const across = placeAcross(geometry, own === null ? range[side] : place);
    if (across < geometry.left - 1 || across > geometry.right + 1) return null;
    return (
      <div
        key={side}
        className={styles.handle}
        style={{ left: across - 22, top: (geometry.windowMiddle ?? 0) - 22 }}
        role="slider"
        tabIndex={0}
        aria-label={`${name}, ${side === 0 ? 'lower' : 'upper'} end`}
        aria-valuemin={places[0]}
        aria-valuemax={places.at(-1)}
        aria-valuenow={place}
        aria-valuetext={text(ends[side])}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          clearTimeout(resting.current);
          pressed.current = true;
          setMoved({ from: rangeKey, ends, inHand: true });
        }}
        onPointerMove={(event) => drag(side, event)}
        onPointerUp={release}
        onPointerCancel={() => {
          pressed.current = false;
          setMoved(null);
        }}
        onKeyDown={(event) => {
          const steps = windowSteps(event);
          if (steps === 0) return;
          event.preventDefault();
          const next = withEnd(side, ends[side] + steps);
          if (next[side] === ends[side]) return;
          clearTimeout(resting.current);
          if (live) lookAt(next);
          else {
            setMoved({ from: rangeKey, ends: next, inHand: false });
            resting.current = setTimeout(() => keep(next), REST_MS);
          }
        }}
      >
        <span className={styles.grip} />
      </div>
    );
  };

  return (
    <>
      {own !== null && (
        <svg className={styles.overlay} width={size.width} height={size.height} aria-hidden="true">
          <SceneElements nodes={drawMarkedRange(geometry, [places[ends[0]]!, places[ends[1]]!], size)} />
        </svg>
      )}
      {handle(0)}
      {handle(1)}
    </>
  );
}
