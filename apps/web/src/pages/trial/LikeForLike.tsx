import type { TrialPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import { Badges } from './Badges.tsx';
import styles from './trial.module.css';

type Condition = TrialPage['likeForLike'][number];

/**
 * The badges, then every condition: what stands in the way of like for like is open, what the band or a badge answers for and
 * what is unknown is named, what is alike is counted.
 */
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
  const unlike = differs.filter(({ isUnlike }) => isUnlike);
  return (
    <Card title="Like for like">
      {badges.length > 0 && <Badges of={badges} />}
      {unlike.length > 0 && (
        <>
          <h3 className={styles.listHead}>
            {unlike.length === 1 ? 'One difference' : `${unlike.length} differences`}
          </h3>
          <Conditions of={unlike} />
        </>
      )}
      <Folded name="In the band or the badges:" of={differs.filter(({ isUnlike }) => !isUnlike)} />
      <Folded name="Changed parts:" of={parts} />
      <Folded name="Unknown:" of={unknown} />
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

/** Conditions of one sort: named in a line, their values and reasons under it. */
function Folded({ name, of }: { name: string; of: Condition[] }) {
  if (of.length === 0) return null;
  return (
    <details className={styles.folded}>
      <summary>
        <strong>{name}</strong> {of.map((one) => one.label).join('; ')}
      </summary>
      <Conditions of={of} />
    </details>
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
