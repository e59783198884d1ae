import type { ReachPage } from '@pullbook/views/reach';
import { Card } from '../../parts/Card.tsx';
import styles from './reach.module.css';

/** Why it cannot be, the least that would make it possible, and what else would. */
export function Infeasible({ of }: { of: NonNullable<ReachPage['infeasible']> }) {
  return (
    <Card title="Out of reach with what can be bought">
      {of.reason !== '' && <p className={styles.plain}>{of.reason}</p>}
      {of.remedy !== '' && (
        <p className={styles.remedy}>
          <strong>The least that would help:</strong> {of.remedy}
        </p>
      )}
      {of.others.length > 0 && (
        <details>
          <summary>{of.others.length === 1 ? 'One more way' : `${of.others.length} more ways`}</summary>
          <ul className={styles.lines}>
            {of.others.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
    </Card>
  );
}
