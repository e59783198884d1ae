import type { CorrectionId } from '@pullbook/core/air';
import type { PullPage } from '@pullbook/views';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { CursorChart } from '../../chart/CursorChart.tsx';
import { CursorNumbers } from '../../chart/CursorNumbers.tsx';
import { PlainChart } from '../../chart/PlainChart.tsx';
import { Card, Panel } from '../../parts/Card.tsx';
import { Chips } from '../../parts/Chips.tsx';
import { SelectField } from '../../parts/Field.tsx';
import { useTabName } from '../../parts/PageHead.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import { STANDARDS } from '../../view/standards.ts';
import { AmendPullDialog } from './AmendPullDialog.tsx';
import { ChannelsTable } from './ChannelsTable.tsx';
import { Conditions } from './Conditions.tsx';
import { HowItIsRead } from './HowItIsRead.tsx';
import { InTrials, Lines, OriginalFile } from './PullParts.tsx';
import styles from './pull.module.css';

/** What the server shows a pull by when nothing is asked for. */
const FIRST_SHOWN: CorrectionId = 'sae-j1349';

const CURVE_COLUMNS = {
  main: ['chart', 'recorded', 'channels'],
  side: ['numbers', 'read', 'cuts', 'spikes', 'remarks', 'conditions', 'notes', 'events', 'trials', 'file'],
} as const;

/** Without a curve, what was written down is the main thing. */
const SUMMARY_COLUMNS = {
  main: ['remarks', 'conditions', 'recorded', 'channels'],
  side: ['read', 'cuts', 'spikes', 'notes', 'events', 'trials', 'file'],
} as const;

export function PullView({ page, correction }: { page: PullPage; correction: CorrectionId | undefined }) {
  useTabName(page.name);
  const navigate = useNavigate({ from: '/pulls/$id' });
  const [chosenNode, setNode] = useState<number | null>(null);
  const last = (page.cursor?.engineSpeedRpm.length ?? 1) - 1;
  const node = Math.min(chosenNode ?? page.cursor?.start ?? 0, last);
  const [amending, setAmending] = useState(false);

  return (
    <article>
      <header className={styles.head}>
        <p className={styles.name}>{page.name}</p>
        <h1>
          <Sentence parts={page.headline} />
        </h1>
        <Chips chips={page.chips}>
          <span className={styles.basis}>{page.basis}</span>
        </Chips>
      </header>
      <TwoColumns
        parts={{
          chart: page.chart !== null && page.cursor !== null && (
            <Panel>
              <CursorChart chart={page.chart} table={page.cursor} node={node} onNode={setNode} />
              <div className={styles.settings}>
                <SelectField
                  label="Power and torque by"
                  value={correction ?? FIRST_SHOWN}
                  options={[...STANDARDS]}
                  onChange={(event) =>
                    void navigate({
                      search: { correction: event.target.value as CorrectionId },
                      replace: true,
                      resetScroll: false,
                    })
                  }
                />
              </div>
            </Panel>
          ),
          recorded: page.recorded !== null && (
            <Card title="As recorded">
              <PlainChart chart={page.recorded} />
            </Card>
          ),
          channels: <ChannelsTable channels={page.channels} />,
          numbers: page.chart !== null && page.cursor !== null && (
            <CursorNumbers chart={page.chart} table={page.cursor} node={node} />
          ),
          read: page.recorded !== null && <HowItIsRead page={page} />,
          cuts: <Lines title="What was cut, and why" lines={page.cuts} />,
          spikes: <Lines title="Rows that stand out" lines={page.spikes} />,
          remarks: page.remarks.length > 0 && (
            <Card title="Remarks">
              <Remarks remarks={page.remarks} />
            </Card>
          ),
          conditions: <Conditions page={page} onAmend={() => setAmending(true)} />,
          notes: <Lines title="Notes" lines={page.notes} />,
          events: <Lines title="Events" lines={page.events} />,
          trials: <InTrials trials={page.trials} />,
          file: page.file !== null && <OriginalFile file={page.file} />,
        }}
        {...(page.chart === null ? SUMMARY_COLUMNS : CURVE_COLUMNS)}
        narrow={[
          'chart',
          'numbers',
          'read',
          'remarks',
          'conditions',
          'notes',
          'events',
          'recorded',
          'cuts',
          'spikes',
          'channels',
          'trials',
          'file',
        ]}
      />
      {amending && <AmendPullDialog page={page} onClose={() => setAmending(false)} />}
    </article>
  );
}
