import type { TrialPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import styles from './trial.module.css';

type Condition = TrialPage['likeForLike'][number];

/** Every condition of the compared pulls: what differs stands open, what is unknown is named, what is alike is counted. */
export function LikeForLike({ conditions }: { conditions: Condition[] }) {
  if (conditions.length === 0) return null;
  const of = (state: Condition['state']) => conditions.filter((one) => one.state === state);
  const [differs, unknown, alike] = [of('differs'), of('unknown'), of('alike')];
  return (
    <Card title="Like for like">
      {differs.length > 0 && <Conditions of={differs} />}
      {unknown.length > 0 && (
        <details className={styles.folded}>
          <summary>
            <strong>Unknown:</strong> {unknown.map((one) => one.label).join('; ')}
          </summary>
          <Conditions of={unknown} />
        </details>
      )}
      {alike.length > 0 && (
        <details className={styles.folded}>
          <summary>
            {alike.length === 1 ? '1 condition is alike' : `${alike.length} conditions are alike`}
          </summary>
          <Conditions of={alike} />
        </details>
      )}
    </Card>
  );
}

function Conditions({ of }: { of: Condition[] }) {
  return (
    <dl className={styles.conditions}>
      {of.map(({ label, values, state, why }) => (
        <div key={label}>
          <dt>{label}</dt>
          {state === 'differs' && <dd className={styles.differs}>differs</dd>}
          {values !== '' && <dd className={styles.values}>{values}</dd>}
          {why !== '' && <dd className={styles.why}>{why}</dd>}
        </div>
      ))}
    </dl>
  );
}
