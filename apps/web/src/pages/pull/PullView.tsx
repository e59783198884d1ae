import type { CorrectionId } from '@pullbook/core/air';
import type { PullPage } from '@pullbook/views';
import { useNavigate } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { CursorChart } from '../../chart/CursorChart.tsx';
import { CursorNumbers } from '../../chart/CursorNumbers.tsx';
import { useCursor } from '../../chart/cursor.ts';
import { useKey } from '../../keys/use-key.ts';
import { Audience } from '../../parts/Audience.tsx';
import { ButtonLink } from '../../parts/Button.tsx';
import { Card, Panel } from '../../parts/Card.tsx';
import { Chips } from '../../parts/Chips.tsx';
import { SelectField } from '../../parts/Field.tsx';
import { FindingsCard } from '../../parts/Findings.tsx';
import { useTabName } from '../../parts/PageHead.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import { type PullSearch, shownRange } from '../../search.ts';
import { STANDARDS } from '../../view/standards.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { AmendPullDialog } from './AmendPullDialog.tsx';
import { ChannelsTable } from './ChannelsTable.tsx';
import { Conditions } from './Conditions.tsx';
import { HowItIsRead } from './HowItIsRead.tsx';
import { InTrials, Lines, OriginalFile } from './PullParts.tsx';
import styles from './pull.module.css';
import { Recorded } from './Recorded.tsx';

const CURVE_COLUMNS = {
  main: ['chart', 'recorded', 'channels'],
  side: ['numbers', 'findings', 'read', 'remarks', 'conditions', 'notes', 'events', 'trials', 'file'],
} as const;

/** Without a curve, what was written down is the main thing. */
const SUMMARY_COLUMNS = {
  main: ['findings', 'remarks', 'conditions', 'recorded', 'channels'],
  side: ['read', 'notes', 'events', 'trials', 'file'],
} as const;

export function PullView({ page, look }: { page: PullPage; look: PullSearch }) {
  useTabName(page.name);
  const { correction: shopCorrection } = useViewChoices();
  const navigate = useNavigate({ from: '/pulls/$id' });
  const cursor = useCursor();
  const { low, high } = look;
  const zoom = useMemo(() => shownRange({ low, high }), [low, high]);
  const lookBy = (change: PullSearch, replace: boolean) =>
    void navigate({ search: (before) => ({ ...before, ...change }), replace, resetScroll: false });
  const [amending, setAmending] = useState(false);
  useKey('next', () => void navigate({ to: '/add', search: { like: page.id } }));

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
        <Audience kind="pull" id={page.id} audience={page.audience} />
        <div className={styles.act}>
          <ButtonLink to="/add" search={{ like: page.id }} shortcut="next">
            Add one like this
          </ButtonLink>
        </div>
      </header>
      <TwoColumns
        parts={{
          chart: page.chart !== null && page.cursor !== null && (
            <Panel>
              <CursorChart
                chart={page.chart}
                table={page.cursor}
                cursor={cursor}
                zoom={zoom}
                onZoom={(range) => lookBy({ low: range?.[0], high: range?.[1] }, false)}
              />
              <div className={styles.settings}>
                <SelectField
                  label="Power and torque by"
                  value={look.correction ?? shopCorrection}
                  options={[...STANDARDS]}
                  onChange={(event) => lookBy({ correction: event.target.value as CorrectionId }, true)}
                />
              </div>
            </Panel>
          ),
          recorded: page.recordedRows > 0 && <Recorded page={page} look={look} />,
          channels: <ChannelsTable channels={page.channels} />,
          numbers: page.chart !== null && page.cursor !== null && (
            <CursorNumbers chart={page.chart} table={page.cursor} cursor={cursor} />
          ),
          read: page.recordedRows > 0 && <HowItIsRead page={page} />,
          findings: <FindingsCard findings={page.findings} />,
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
          'findings',
          'read',
          'remarks',
          'conditions',
          'notes',
          'events',
          'recorded',
          'channels',
          'trials',
          'file',
        ]}
      />
      {amending && <AmendPullDialog page={page} onClose={() => setAmending(false)} />}
    </article>
  );
}
