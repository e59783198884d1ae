import {
  type DrawSize,
  drawMap,
  drawMapCursor,
  type MapDescription,
  type MapGeometry,
} from '@pullbook/charts';
import type { CursorTable } from '@pullbook/views';
import { useMemo } from 'react';
import { useTheme } from '../view/theme.ts';
import styles from './chart.module.css';
import { type Cursor, useNode } from './cursor.ts';
import { mapSize } from './map-size.ts';
import { SceneElements } from './SceneElements.tsx';
import { Stack } from './Stack.tsx';
import { useWidth } from './use-width.ts';

/** A compressor map as wide as its place. With a cursor: marks where each combination runs at its engine speed. */
export function MapChart({
  map,
  follow,
  size: sizeOf = mapSize,
}: {
  map: MapDescription;
  follow?: { cursor: Cursor; table: CursorTable };
  size?: typeof mapSize;
}) {
  const [box, width] = useWidth<HTMLDivElement>();
  const theme = useTheme();
  const size = useMemo(() => sizeOf(width, theme), [sizeOf, width, theme]);
  const drawn = useMemo(() => (width === 0 ? null : drawMap(map, size)), [map, size, width]);
  return (
    <div className={styles.box} ref={box}>
      {drawn !== null && (
        <>
          <Stack scene={drawn.scene} />
          {follow !== undefined && <Marker {...follow} map={map} geometry={drawn.geometry} size={size} />}
        </>
      )}
    </div>
  );
}

/** What moves over a drawn map. */
function Marker({
  cursor,
  table,
  map,
  geometry,
  size,
}: {
  cursor: Cursor;
  table: CursorTable;
  map: MapDescription;
  geometry: MapGeometry;
  size: DrawSize;
}) {
  const at = table.at[useNode(cursor, table)];
  if (at === undefined) return null;
  return (
    <svg className={styles.overlay} width={size.width} height={size.height} aria-hidden="true">
      <SceneElements nodes={drawMapCursor(map, geometry, at, size)} />
    </svg>
  );
}
