import { type ChartDescription, pointText } from '@pullbook/charts';
import { formatNumber } from '@pullbook/core/quantity';
import type { PullPage, RecordedPage } from '@pullbook/views';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { recordedQuestion } from '../../api/questions.ts';
import { CursorChart, type Range } from '../../chart/CursorChart.tsx';
import { useCursor } from '../../chart/cursor.ts';
import { nearest } from '../../chart/nearest.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import type { PullSearch } from '../../search.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { ChooseChannels } from './ChooseChannels.tsx';
import { CutsAndSpikes } from './CutsAndSpikes.tsx';
import styles from './pull.module.css';
import { RecordedNumbers } from './RecordedNumbers.tsx';
import { SetWindow } from './SetWindow.tsx';

/** A pull as recorded, over time or engine speed: where the window that counts is seen and set. */
export function Recorded({ page, look }: { page: PullPage; look: PullSearch }) {
  const navigate = useNavigate({ from: '/pulls/$id' });
  const { over, channels, recordedLow: low, recordedHigh: high } = look;
  const view = useViewChoices();
  const recorded = useQuery(recordedQuestion(page.id, { over, low, high, channels }, view));
  const [wanted, setWanted] = useState<Range | null>(null);
  const [turn, setTurn] = useState(0);

  const lookBy = (change: PullSearch, replace: boolean) =>
    void navigate({ search: (before) => ({ ...before, ...change }), replace, resetScroll: false });
  const all = { recordedLow: undefined, recordedHigh: undefined };
  const overWhat = (next: 'speed' | undefined, text: string) => (
    <Button
      small
      aria-pressed={over === next}
      look={over === next ? 'main' : 'plain'}
      onPress={() => lookBy({ over: next, channels: undefined, ...all }, false)}
    >
      {text}
    </Button>
  );
  const shown = recorded.data;
  return (
    <Card
      title="As recorded"
      beside={
        shown?.hasSpeed === true && (
          <div className={styles.over}>
            {overWhat(undefined, shown.hasTime ? 'Over time' : 'By row')}
            {overWhat('speed', 'Over engine speed')}
          </div>
        )
      }
    >
      {shown === undefined && (recorded.isPending ? <Waiting /> : <Trouble of={recorded.error} />)}
      {shown !== undefined && shown.chart === null && <p>Nothing of it can be drawn so.</p>}
      {shown !== undefined && shown.chart !== null && shown.cursor !== null && (
        <RecordedStack
          key={`${shown.over}`}
          shown={{ ...shown, chart: shown.chart, cursor: shown.cursor }}
          low={low}
          high={high}
          isCurve={page.chart !== null}
          onZoom={(range) => lookBy({ recordedLow: range?.[0], recordedHigh: range?.[1] }, false)}
          onWindow={setWanted}
          turn={turn}
        />
      )}
      <SetWindow
        page={page}
        wanted={wanted}
        onDone={() => {
          setWanted(null);
          setTurn(turn + 1);
        }}
      />
      <CutsAndSpikes page={page} over={over ?? 'time'} />
      {shown !== undefined && (
        <ChooseChannels
          channels={shown.channels}
          onChannels={(ids) => lookBy({ channels: ids?.join(',') }, true)}
        />
      )}
    </Card>
  );
}

type Drawn = RecordedPage & { chart: ChartDescription; cursor: NonNullable<RecordedPage['cursor']> };

function RecordedStack({
  shown,
  low,
  high,
  isCurve,
  onZoom,
  onWindow,
  turn,
}: {
  shown: Drawn;
  low: number | undefined;
  high: number | undefined;
  /** Whether there is a chart above that the cursor's key goes to. */
  isCurve: boolean;
  onZoom: (range: Range | null) => void;
  onWindow: (rpm: Range) => void;
  turn: number;
}) {
  const cursor = useCursor();
  const { chart, windowSteps: steps, over } = shown;
  const zoom = useMemo((): Range | null => {
    return low === undefined || high === undefined ? null : [low, high];
  }, [low, high]);
  const speed = (step: number) =>
    `${formatNumber(steps.engineSpeedRpm[step]!, 0, chart.decimalMark, { thousands: true })} rpm`;
  /** From two places of the axis to the engine speeds there, the lower first. */
  const setFrom = (one: number, other: number) => {
    const ends = [steps.engineSpeedRpm[one]!, steps.engineSpeedRpm[other]!];
    onWindow([Math.min(...ends), Math.max(...ends)]);
  };
  return (
    <>
      <CursorChart
        chart={chart}
        table={shown.cursor}
        cursor={cursor}
        zoom={zoom}
        onZoom={onZoom}
        goesByKey={!isCurve}
        window={
          chart.xWindow && {
            name: 'Counted',
            range: chart.xWindow.range,
            places: steps.at,
            turn,
            text: (step) =>
              over === 'speed' ? speed(step) : `${pointText(chart, steps.at[step]!)}, ${speed(step)}`,
            onSet: setFrom,
          }
        }
        {...(steps.at.length > 1
          ? {
              rangeAct: {
                key: 'count',
                text: 'Count only this',
                act: ([from, to]: Range) => setFrom(nearest(steps.at, from), nearest(steps.at, to)),
              } as const,
            }
          : {})}
      />
      <RecordedNumbers chart={chart} table={shown.cursor} cursor={cursor} />
    </>
  );
}
