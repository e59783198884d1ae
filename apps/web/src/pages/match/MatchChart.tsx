import type { MatchPage } from '@pullbook/views/match';
import { useMemo } from 'react';
import { CursorChart, type Range } from '../../chart/CursorChart.tsx';
import type { Cursor } from '../../chart/cursor.ts';
import { Panel } from '../../parts/Card.tsx';
import { type MatchSearch, shownRange } from '../../search.ts';

/** Power, torque, boost and charge temperature, matched beside measured. */
export function MatchChart({
  page,
  cursor,
  search: { low, high },
  onZoom,
}: {
  page: MatchPage;
  cursor: Cursor;
  search: MatchSearch;
  onZoom: (range: Range | null) => void;
}) {
  const zoom = useMemo(() => shownRange({ low, high }), [low, high]);
  return (
    <Panel>
      <CursorChart chart={page.chart} table={page.cursor} cursor={cursor} zoom={zoom} onZoom={onZoom} />
    </Panel>
  );
}
