import { type ChartDescription, drawStack, rangeText, shownOf, zoomed } from '@pullbook/charts';
import type { CursorTable } from '@pullbook/views';
import { useMemo, useRef, useState } from 'react';
import { useKey } from '../keys/use-key.ts';
import { Button } from '../parts/Button.tsx';
import { useTheme } from '../view/theme.ts';
import { CursorHair } from './CursorHair.tsx';
import { CursorSlider } from './CursorSlider.tsx';
import styles from './chart.module.css';
import type { Cursor } from './cursor.ts';
import { Stack } from './Stack.tsx';
import { stackSize } from './stack-size.ts';
import { useWidth } from './use-width.ts';
import { type ChartWindow, WindowHandles } from './WindowHandles.tsx';

export type Range = readonly [low: number, high: number];

/** What a page offers to do with a marked range, besides zooming to it. */
export interface RangeAct {
  key: 'average' | 'count';
  text: string;
  act: (range: Range) => void;
}

/**
 * A stack of panels with its cursor: by mouse, by a finger across, by arrow keys. Dragging across marks a range to zoom
 * to or to act on; the zoom itself is the page's, since it stands in the address.
 */
export function CursorChart({
  chart: whole,
  table,
  cursor,
  zoom,
  onZoom,
  window,
  rangeAct,
  onDigit,
  goesByKey = true,
}: {
  chart: ChartDescription;
  table: CursorTable;
  cursor: Cursor;
  zoom: Range | null;
  onZoom: (range: Range | null) => void;
  window?: ChartWindow | null;
  rangeAct?: RangeAct;
  onDigit?: (digit: number) => void;
  /** Whether the page's key for the cursor goes to this one. */
  goesByKey?: boolean;
}) {
  const [box, width] = useWidth<HTMLDivElement>();
  const slider = useRef<HTMLDivElement>(null);
  const theme = useTheme();
  const chart = useMemo(() => (zoom === null ? whole : zoomed(whole, zoom)), [whole, zoom]);
  const size = useMemo(() => stackSize(chart, width, theme), [chart, width, theme]);
  const drawn = useMemo(() => (width === 0 ? null : drawStack(chart, size)), [chart, size, width]);
  const [ends, setEnds] = useState<Range | null>(null);
  const [marking, setMarking] = useState(false);
  useKey('cursor', () => goesByKey && slider.current?.focus());

  const marked: Range | null = ends === null ? null : ends[0] <= ends[1] ? ends : [ends[1], ends[0]];
  const isRange = marked !== null && marked[0] < marked[1];
  const isZoomed = chart !== whole;

  /** What a range was marked for is done, and the mark is gone. */
  function actOn(act: (range: Range) => void) {
    if (marked === null || !isRange) return;
    setEnds(null);
    setMarking(false);
    slider.current?.focus({ preventScroll: true });
    act(marked);
  }

  function showAll() {
    slider.current?.focus({ preventScroll: true });
    onZoom(null);
  }

  const place = (node: number) => table.at[node]!;
  const actByKey = (key: RangeAct['key']) => () => {
    if (rangeAct?.key === key) actOn(rangeAct.act);
  };

  return (
    <>
      <div className={styles.box} ref={box}>
        {drawn !== null && (
          <>
            <Stack scene={drawn.scene} />
            <CursorHair
              chart={chart}
              table={table}
              cursor={cursor}
              geometry={drawn.geometry}
              size={size}
              marked={marked}
            />
            <CursorSlider
              ref={slider}
              chart={chart}
              table={table}
              cursor={cursor}
              geometry={drawn.geometry}
              marking={marking}
              onMarked={(from, to) => setEnds([place(from), place(to)])}
              acts={{
                markFrom: (node) => setEnds([place(node), ends?.[1] ?? place(node)]),
                markTo: (node) => setEnds([ends?.[0] ?? place(node), place(node)]),
                zoom: () => actOn(onZoom),
                all: () => isZoomed && showAll(),
                clear: () => (ends === null ? isZoomed && showAll() : setEnds(null)),
                average: actByKey('average'),
                count: actByKey('count'),
                toggle: (_, key) => onDigit?.(Number(key)),
              }}
            />
            {window && drawn.geometry.windowMiddle !== null && window.places.length > 1 && (
              <WindowHandles window={window} geometry={drawn.geometry} size={size} />
            )}
          </>
        )}
      </div>
      <div className={styles.below}>
        {marked === null ? (
          <>
            <span className={styles.byFinger}>
              <Button small onPress={() => setMarking(!marking)} aria-pressed={marking}>
                {marking ? 'Now drag across the chart' : 'Mark a range'}
              </Button>
            </span>
            {isZoomed ? (
              <>
                <span role="status">Shown: {shownOf(chart, whole)}</span>
                <Button small onPress={showAll}>
                  Show all
                </Button>
              </>
            ) : (
              <p className={styles.help}>
                Point at the chart, or press C and use the arrow keys. Drag across to mark a range.
              </p>
            )}
          </>
        ) : (
          <>
            <span role="status">Marked: {rangeText(chart, marked)}</span>
            <Button small look="main" isDisabled={!isRange} onPress={() => actOn(onZoom)}>
              Zoom to it
            </Button>
            {rangeAct !== undefined && (
              <Button small isDisabled={!isRange} onPress={() => actOn(rangeAct.act)}>
                {rangeAct.text}
              </Button>
            )}
            <Button small look="quiet" onPress={() => setEnds(null)}>
              Clear the mark
            </Button>
          </>
        )}
      </div>
    </>
  );
}
