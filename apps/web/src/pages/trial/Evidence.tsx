import type { EvidenceRow, TrialPage } from '@pullbook/views';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { CombinationKey } from '../../parts/CombinationKey.tsx';
import { ChoosePulls } from './ChoosePulls.tsx';
import { RoleDialog } from './RoleDialog.tsx';
import styles from './trial.module.css';
import type { HiddenOfTrial } from './use-hidden.ts';

/** So many of the pulls still to make stand open: a long plan would bury what was measured. */
const NEXT_PLANNED = 2;

/** The pulls that the answer rests on, each with its role. Nothing is ever thrown away. */
export function Evidence({ page, hidden }: { page: TrialPage; hidden: HiddenOfTrial }) {
  const [choosing, setChoosing] = useState(false);
  const [changingRole, setChangingRole] = useState<EvidenceRow | null>(null);

  const isHidden = (row: EvidenceRow) =>
    hidden.pulls.has(row.pullId) || hidden.combinations.has(row.combination);

  return (
    <Card title="Evidence">
      <ul className={styles.evidence}>
        {page.evidence.map((row) => (
          <li key={row.pullId}>
            <span className={styles.letter}>
              <CombinationKey text={row.key} combination={row.combination} />
            </span>
            <span>
              <Link to="/pulls/$id" params={{ id: row.pullId }}>
                {row.name}
              </Link>
              {row.role !== 'counted' && <span className={styles.role}> · {row.role}</span>}
              {isHidden(row) && <span className={styles.role}> · hidden on the chart</span>}
            </span>
            <p className={styles.more}>
              {row.role !== 'counted' && row.reason !== '' && <>{row.reason.replace(/\.$/, '')}. </>}
              {row.facts}
            </p>
            <div className={styles.acts}>
              <Button
                look="quiet"
                small
                aria-label={`${row.role === 'counted' ? 'Reject' : 'Accept'} ${row.name}`}
                onPress={() => setChangingRole(row)}
              >
                {row.role === 'counted' ? 'Reject' : 'Accept'}
              </Button>
              {page.chart !== null && (
                <Button
                  look="quiet"
                  small
                  aria-label={`${hidden.pulls.has(row.pullId) ? 'Show' : 'Hide'} on the chart: ${row.name}`}
                  onPress={() => hidden.toggle(row.pullId)}
                >
                  {hidden.pulls.has(row.pullId) ? 'Show on the chart' : 'Hide on the chart'}
                </Button>
              )}
            </div>
          </li>
        ))}
        <Planned of={page.planned.slice(0, NEXT_PLANNED)} />
      </ul>
      {page.planned.length > NEXT_PLANNED && (
        <details className={styles.later}>
          <summary>{page.planned.length - NEXT_PLANNED} more are planned after these</summary>
          <ul className={styles.evidence}>
            <Planned of={page.planned.slice(NEXT_PLANNED)} />
          </ul>
        </details>
      )}
      <div className={styles.foot}>
        <Button onPress={() => setChoosing(true)}>Take more pulls</Button>
      </div>
      {choosing && <ChoosePulls page={page} onClose={() => setChoosing(false)} />}
      {changingRole !== null && (
        <RoleDialog page={page} row={changingRole} onClose={() => setChangingRole(null)} />
      )}
    </Card>
  );
}

function Planned({ of }: { of: TrialPage['planned'] }) {
  return of.map((row) => (
    <li key={row.text}>
      <span className={styles.letter}>
        <CombinationKey text={row.key} combination={row.combination} />
      </span>
      <span className={styles.planned}>{row.text}</span>
    </li>
  ));
}
