import type { TrialPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import { Badges } from './Badges.tsx';
import styles from './trial.module.css';

type Condition = TrialPage['likeForLike'][number];

/** The badges, then every condition: what differs stands open, what is unknown is named, what is alike is counted. */
export function LikeForLike({
  badges,
  conditions,
}: {
  badges: TrialPage['badges'];
  conditions: Condition[];
}) {
  if (conditions.length === 0) return null;
  const parts = conditions.filter(({ isPart }) => isPart);
  const of = (state: Condition['state']) => conditions.filter((one) => one.state === state && !one.isPart);
  const [differs, unknown, alike] = [of('differs'), of('unknown'), of('alike')];
  return (
    <Card title="Like for like">
      {badges.length > 0 && <Badges of={badges} />}
      {differs.length > 0 && (
        <>
          <h3 className={styles.listHead}>
            {differs.length === 1 ? 'One difference' : `${differs.length} differences`}
          </h3>
          <Conditions of={differs} />
        </>
      )}
      {parts.length > 0 && (
        <details className={styles.folded}>
          <summary>
            <strong>Changed parts:</strong> {parts.map((one) => one.label).join('; ')}
          </summary>
          <Conditions of={parts} />
        </details>
      )}
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
      {of.map(({ id, label, values, state, why, isPart }) => (
        <div key={id}>
          <dt>{label}</dt>
          {state === 'differs' && !isPart && <dd className={styles.differs}>differs</dd>}
          {values !== '' && <dd className={styles.values}>{values}</dd>}
          {why !== '' && <dd className={styles.why}>{why}</dd>}
        </div>
      ))}
    </dl>
  );
}
