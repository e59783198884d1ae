import type { PlanPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import { CombinationKey } from '../../parts/CombinationKey.tsx';
import styles from './plan.module.css';

/** The pulls still to make, as a person does them: one stay of a combination after another. */
export function PlannedOrder({ page }: { page: PlanPage }) {
  return (
    <Card title="In this order">
      <ol className={styles.stays}>
        {page.stays.map((stay, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a combination may come again, and the order is all there is
          <li key={`${stay.key} ${place}`}>
            <span className={styles.letter}>
              <CombinationKey text={stay.key} combination={stay.combination} />
            </span>
            <div>
              <p>
                <strong>{stay.pulls}</strong> of {stay.name}
              </p>
              {stay.fitting !== '' && <p>{stay.fitting}</p>}
              {stay.before !== '' && <p className={styles.soft}>{stay.before}</p>}
            </div>
          </li>
        ))}
      </ol>
    </Card>
  );
}
