import { pointText } from '@pullbook/charts';
import type { TrialPage } from '@pullbook/views';
import { useNavigate } from '@tanstack/react-router';
import { useMemo } from 'react';
import { CursorChart, type Range } from '../../chart/CursorChart.tsx';
import type { Cursor } from '../../chart/cursor.ts';
import { withoutHidden } from '../../chart/without-hidden.ts';
import { Panel } from '../../parts/Card.tsx';
import { shownRange, type TrialSearch } from '../../search.ts';
import { OnTheChart } from './OnTheChart.tsx';
import { TrialSettings } from './TrialSettings.tsx';
import styles from './trial.module.css';
import type { HiddenOfTrial } from './use-hidden.ts';

/** The stack of panels, with the standard and the window that it is drawn by. */
export function TrialChart({
  page,
  look,
  cursor,
  hidden,
}: {
  page: TrialPage;
  look: TrialSearch;
  cursor: Cursor;
  hidden: HiddenOfTrial;
}) {
  const navigate = useNavigate({ from: '/trials/$id' });
  const { combinations, pulls } = hidden;
  const chart = useMemo(
    () => (page.chart === null ? null : withoutHidden(page.chart, { combinations, pulls })),
    [page.chart, combinations, pulls],
  );
  const { low, high } = look;
  const zoom = useMemo(() => shownRange({ low, high }), [low, high]);
  if (chart === null || page.cursor === null) return null;

  const places = page.cursor.at;
  const lookBy = (change: TrialSearch, replace: boolean) =>
    void navigate({ search: (before) => ({ ...before, ...change }), replace, resetScroll: false });
  const average = ([from, to]: Range) => lookBy({ from, to }, true);
  return (
    <Panel>
      {page.combinations.length > 1 && <OnTheChart page={page} hidden={hidden} />}
      <CursorChart
        chart={chart}
        table={page.cursor}
        cursor={cursor}
        zoom={zoom}
        onZoom={(range) => lookBy({ low: range?.[0], high: range?.[1] }, false)}
        window={
          chart.xWindow && {
            name: 'Averages',
            range: chart.xWindow.range,
            places,
            text: (place) => pointText(chart, places[place]!),
            live: true,
            onSet: (from, to) => average([places[from]!, places[to]!]),
          }
        }
        rangeAct={{ key: 'average', text: 'Average over it', act: average }}
        onDigit={(digit) => {
          const combination = page.combinations[digit - 1];
          if (combination !== undefined) hidden.toggle(combination.key);
        }}
      />
      <TrialSettings
        key={`${page.settings.averagesWindowRpm} ${page.settings.commonWindowRpm}`}
        page={page}
        look={look}
      />
      {page.standardNotes.length > 0 && (
        <div className={styles.notes}>
          {page.standardNotes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </div>
      )}
    </Panel>
  );
}
