import { type ChartDescription, drawCursor, drawStack } from '@pullbook/charts';
import type { CursorTable } from '@pullbook/views';
import { type PointerEvent, useMemo, useRef } from 'react';
import { useKey } from '../keys/use-key.ts';
import { useTheme } from '../view/theme.ts';
import styles from './chart.module.css';
import { cursorText } from './cursor-text.ts';
import { nodeAt } from './node-at.ts';
import { SceneElements } from './SceneElements.tsx';
import { Stack } from './Stack.tsx';
import { stackSize } from './stack-size.ts';
import { useWidth } from './use-width.ts';

/** Where an arrow key takes the cursor; `null`: not a key of the cursor. */
function nodeByKey(key: string, shift: boolean, node: number, last: number): number | null {
  const step = shift ? 10 : 1;
  if (key === 'ArrowRight' || key === 'ArrowUp') return Math.min(last, node + step);
  if (key === 'ArrowLeft' || key === 'ArrowDown') return Math.max(0, node - step);
  if (key === 'PageUp') return Math.min(last, node + 10);
  if (key === 'PageDown') return Math.max(0, node - 10);
  if (key === 'Home') return 0;
  if (key === 'End') return last;
  return null;
}

/** A stack of panels with its cursor: by mouse, by a finger across, by arrow keys. */
export function CursorChart({
  chart,
  table,
  node,
  onNode,
}: {
  chart: ChartDescription;
  table: CursorTable;
  node: number;
  onNode: (node: number) => void;
}) {
  const [box, width] = useWidth<HTMLDivElement>();
  const slider = useRef<HTMLDivElement>(null);
  const theme = useTheme();
  const size = useMemo(() => stackSize(chart, width, theme), [chart, width, theme]);
  const drawn = useMemo(() => (width === 0 ? null : drawStack(chart, size)), [chart, size, width]);
  useKey('cursor', () => slider.current?.focus());

  const last = table.engineSpeedRpm.length - 1;
  const at = table.engineSpeedRpm[node];

  function follow(event: PointerEvent<HTMLDivElement>) {
    if (drawn === null || box.current === null) return;
    if (event.pointerType !== 'mouse' && event.buttons === 0) return;
    const pixel = event.clientX - box.current.getBoundingClientRect().left;
    onNode(nodeAt(pixel, drawn.geometry, table.engineSpeedRpm));
  }

  return (
    <>
      <div className={styles.box} ref={box}>
        {drawn !== null && at !== undefined && (
          <>
            <Stack scene={drawn.scene} />
            <svg
              className={styles.overlay}
              width={drawn.scene.width}
              height={drawn.scene.height}
              aria-hidden="true"
            >
              <SceneElements nodes={drawCursor(chart, drawn.geometry, at, size)} />
            </svg>
            <div
              ref={slider}
              className={styles.slider}
              style={{
                left: drawn.geometry.left - 8,
                width: drawn.geometry.right - drawn.geometry.left + 16,
                top: drawn.geometry.top - 8,
                height: drawn.geometry.bottom - drawn.geometry.top + 16,
              }}
              role="slider"
              tabIndex={0}
              aria-label={`Cursor, ${chart.xTitle}`}
              aria-valuemin={table.engineSpeedRpm[0]}
              aria-valuemax={table.engineSpeedRpm[last]}
              aria-valuenow={at}
              aria-valuetext={cursorText(table, node, chart.xUnit)}
              onPointerDown={follow}
              onPointerMove={follow}
              onKeyDown={(event) => {
                const next = nodeByKey(event.key, event.shiftKey, node, last);
                if (next === null) return;
                event.preventDefault();
                onNode(next);
              }}
            />
          </>
        )}
      </div>
      <p className={styles.help}>Point at the chart, or press C and use the arrow keys.</p>
    </>
  );
}
