import type { ShownRemark } from '@pullbook/views';
import type { ReachPage } from '@pullbook/views/reach';
import { type ReactNode, useMemo, useRef } from 'react';
import { CursorChart, type Range } from '../../chart/CursorChart.tsx';
import { CursorNumbers } from '../../chart/CursorNumbers.tsx';
import { useCursor } from '../../chart/cursor.ts';
import { MapChart } from '../../chart/MapChart.tsx';
import { Card, Panel } from '../../parts/Card.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import { type KeptReachSearch, shownRange } from '../../search.ts';
import { ChosenHead } from './ChosenHead.tsx';
import { FiguresCard } from './FiguresCard.tsx';
import { Infeasible } from './Infeasible.tsx';
import { Ladder } from './Ladder.tsx';
import { LeftCard } from './LeftCard.tsx';
import { LimitsCard } from './LimitsCard.tsx';
import { NearCard } from './NearCard.tsx';
import styles from './reach.module.css';

/** A ladder with its chosen rung laid open beside it. */
export function ReachView({
  page,
  search: { low, high },
  onLook,
  acts,
  more = null,
}: {
  page: ReachPage;
  search: KeptReachSearch;
  onLook: (at: KeptReachSearch) => void;
  /** What can be done with the chosen rung. */
  acts: ReactNode;
  /** What else stands beside the ladder. */
  more?: ReactNode;
}) {
  const cursor = useCursor();
  const head = useRef<HTMLHeadingElement>(null);
  const zoom = useMemo(() => shownRange({ low, high }), [low, high]);
  const onZoom = (range: Range | null) => onLook({ low: range?.[0], high: range?.[1] });
  const { chosen } = page;
  const open = () => {
    head.current?.scrollIntoView({ block: 'start' });
    head.current?.focus({ preventScroll: true });
  };
  return (
    <TwoColumns
      even
      parts={{
        infeasible: page.infeasible !== null && <Infeasible of={page.infeasible} />,
        ladder: <Ladder page={page} onChoose={(rung) => onLook({ rung })} onOpen={open} acts={acts} />,
        chosen: chosen !== null && <ChosenHead chosen={chosen} headRef={head} />,
        chart: chosen !== null && (
          <Panel>
            <CursorChart
              chart={chosen.chart}
              table={chosen.cursor}
              cursor={cursor}
              zoom={zoom}
              onZoom={onZoom}
            />
          </Panel>
        ),
        numbers: chosen !== null && (
          <CursorNumbers chart={chosen.chart} table={chosen.cursor} cursor={cursor} />
        ),
        map: chosen !== null && chosen.map !== null && (
          <Card title="On the compressor’s map">
            <MapChart map={chosen.map} follow={{ cursor, table: chosen.cursor }} />
          </Card>
        ),
        limits: chosen !== null && <LimitsCard limits={chosen.limits} />,
        figures: chosen !== null && <FiguresCard title="What it makes" of={chosen.figures} />,
        fuel: chosen !== null && <FiguresCard title="Fuel" of={chosen.fuel} under={chosen.fuelEffect} />,
        near: chosen !== null && <NearCard near={chosen.near} />,
        left: <LeftCard left={page.left} />,
        assumptions: chosen !== null && <Folded title="Assumed" of={chosen.assumptions} />,
        cautions: page.cautions.length > 0 && (
          <Card title="Cautions">
            <ul className={styles.lines}>
              {page.cautions.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </Card>
        ),
        remarks: <Folded title="Remarks" of={page.remarks} />,
        more,
      }}
      main={['infeasible', 'ladder', 'left', 'near', 'more', 'assumptions']}
      side={['chosen', 'chart', 'numbers', 'map', 'figures', 'fuel']}
      below={['limits', 'cautions', 'remarks']}
      narrow={[
        'infeasible',
        'ladder',
        'chosen',
        'chart',
        'numbers',
        'map',
        'limits',
        'figures',
        'fuel',
        'near',
        'left',
        'more',
        'assumptions',
        'cautions',
        'remarks',
      ]}
    />
  );
}

/** More remarks than these are folded: the ladder comes first. */
const UNFOLDED = 4;

function Folded({ title, of }: { title: string; of: ShownRemark[] }) {
  if (of.length === 0) return null;
  return (
    <Card title={title}>
      {of.length > UNFOLDED ? (
        <details className={styles.side}>
          <summary>{of.length} lines</summary>
          <Remarks remarks={of} />
        </details>
      ) : (
        <Remarks remarks={of} />
      )}
    </Card>
  );
}
