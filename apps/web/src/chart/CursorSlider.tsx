import type { ChartDescription, StackGeometry } from '@pullbook/charts';
import type { CursorTable } from '@pullbook/views';
import { type KeyboardEvent, type PointerEvent, type Ref, useRef } from 'react';
import { type CursorKeyId, cursorKey } from '../keys/cursor-keys.ts';
import styles from './chart.module.css';
import { type Cursor, useNode } from './cursor.ts';
import { cursorText } from './cursor-text.ts';
import { placesWithin } from './nearest.ts';
import { nodeAt } from './node-at.ts';

/** A press that moves less than this is a click, not a range. */
const DRAG_PX = 8;

/** What the cursor's keys do besides moving it. */
export type CursorActs = Record<
  Exclude<CursorKeyId, 'back' | 'on' | 'farBack' | 'farOn' | 'first' | 'last'>,
  (node: number, key: string) => void
>;

/** The cursor as a slider over the panels: pointing moves it, dragging across marks a range, keys do all of it. */
export function CursorSlider({
  ref,
  chart,
  table,
  cursor,
  geometry,
  acts,
  marking,
  onMarked,
}: {
  ref: Ref<HTMLDivElement>;
  chart: ChartDescription;
  table: CursorTable;
  cursor: Cursor;
  geometry: StackGeometry;
  acts: CursorActs;
  /** A finger across marks a range instead of moving the cursor. */
  marking: boolean;
  onMarked: (fromNode: number, toNode: number) => void;
}) {
  const node = useNode(cursor, table);
  const [first, last] = placesWithin(table.at, geometry.xRange);
  const pressed = useRef<{ pixel: number; node: number; dragged: boolean } | null>(null);

  const within = (wanted: number) => Math.max(first, Math.min(last, wanted));
  const moveTo = (wanted: number) => cursor.moveTo(table.at[within(wanted)]!);

  /** The box begins 8 px left of the plots: see the stylesheet. */
  function pixelOf(event: PointerEvent<HTMLDivElement>) {
    return event.clientX - event.currentTarget.getBoundingClientRect().left + geometry.left - 8;
  }

  function press(event: PointerEvent<HTMLDivElement>) {
    const pixel = pixelOf(event);
    const at = within(nodeAt(pixel, geometry, table.at));
    moveTo(at);
    if (event.button !== 0 || !(event.pointerType === 'mouse' || marking)) return;
    pressed.current = { pixel, node: at, dragged: false };
    event.currentTarget.setPointerCapture(event.pointerId);
  }

  function move(event: PointerEvent<HTMLDivElement>) {
    if (event.pointerType !== 'mouse' && event.buttons === 0) return;
    const pixel = pixelOf(event);
    const at = within(nodeAt(pixel, geometry, table.at));
    moveTo(at);
    const start = pressed.current;
    if (start === null) return;
    start.dragged ||= Math.abs(pixel - start.pixel) > DRAG_PX;
    if (start.dragged) onMarked(start.node, at);
  }

  function hear(event: KeyboardEvent<HTMLDivElement>) {
    const key = cursorKey(event);
    if (key === null) return;
    event.preventDefault();
    const step = event.shiftKey ? 10 : 1;
    if (key === 'back') moveTo(node - step);
    else if (key === 'on') moveTo(node + step);
    else if (key === 'farBack') moveTo(node - 10);
    else if (key === 'farOn') moveTo(node + 10);
    else if (key === 'first') moveTo(first);
    else if (key === 'last') moveTo(last);
    else acts[key](node, event.key);
  }

  return (
    <div
      ref={ref}
      className={styles.slider}
      style={{
        left: geometry.left - 8,
        width: geometry.right - geometry.left + 16,
        top: geometry.top - 8,
        height: geometry.bottom - geometry.top + 16,
        ...(marking ? { touchAction: 'none' } : {}),
      }}
      role="slider"
      tabIndex={0}
      aria-label={`Cursor, ${chart.xTitle}`}
      aria-valuemin={table.at[first]}
      aria-valuemax={table.at[last]}
      aria-valuenow={table.at[node]}
      aria-valuetext={cursorText(table, node, chart.xUnit)}
      onPointerDown={press}
      onPointerMove={move}
      onPointerUp={() => {
        pressed.current = null;
      }}
      onPointerCancel={() => {
        pressed.current = null;
      }}
      onKeyDown={hear}
    />
  );
}
