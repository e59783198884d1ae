import type { TrialPage } from '@pullbook/views';
import { useMemo } from 'react';
import { CursorChart } from '../../chart/CursorChart.tsx';
import { withoutPulls } from '../../chart/without-pulls.ts';
import { Panel } from '../../parts/Card.tsx';
import type { TrialSearch } from '../../search.ts';
import { TrialSettings } from './TrialSettings.tsx';
import styles from './trial.module.css';

/** The stack of panels, with the standard and the window that it is drawn by. */
export function TrialChart({
  page,
  look,
  node,
  onNode,
  hiddenPulls,
}: {
  page: TrialPage;
  look: TrialSearch;
  node: number;
  onNode: (node: number) => void;
  hiddenPulls: ReadonlySet<string>;
}) {
  const chart = useMemo(
    () => (page.chart === null ? null : withoutPulls(page.chart, hiddenPulls)),
    [page.chart, hiddenPulls],
  );
  if (chart === null || page.cursor === null) return null;
  return (
    <Panel>
      <CursorChart chart={chart} table={page.cursor} node={node} onNode={onNode} />
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
