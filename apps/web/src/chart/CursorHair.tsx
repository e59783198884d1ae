import {
  type ChartDescription,
  type DrawSize,
  drawCursor,
  drawMarkedRange,
  type StackGeometry,
} from '@pullbook/charts';
import type { CursorTable } from '@pullbook/views';
import styles from './chart.module.css';
import { type Cursor, useNode } from './cursor.ts';
import { SceneElements } from './SceneElements.tsx';

/** What moves over a drawn stack: the hair with its marks, and the range that is being marked. */
export function CursorHair({
  chart,
  table,
  cursor,
  geometry,
  size,
  marked,
}: {
  chart: ChartDescription;
  table: CursorTable;
  cursor: Cursor;
  geometry: StackGeometry;
  size: DrawSize;
  marked: readonly [number, number] | null;
}) {
  const at = table.at[useNode(cursor, table)];
  return (
    <svg className={styles.overlay} width={size.width} height={size.height} aria-hidden="true">
      {marked !== null && <SceneElements nodes={drawMarkedRange(geometry, marked, size)} />}
      {at !== undefined && <SceneElements nodes={drawCursor(chart, geometry, at, size)} />}
    </svg>
  );
}
