import type { TrialPage } from '@pullbook/views';
import { ButtonLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import styles from './trial.module.css';

/** Pulls that the answer still needs, and the way to them. */
export function Missing({ page }: { page: TrialPage }) {
  if (page.missing.length === 0) return null;
  const withoutPull = page.combinations.find((one) => one.counted === 0);
  return (
    <Card title="What is missing">
      <div className={styles.missing}>
        {page.missing.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <div className={styles.foot}>
          <ButtonLink
            to="/add"
            search={withoutPull === undefined ? {} : { combination: withoutPull.id }}
            look="main"
            shortcut="addPulls"
          >
            Add pulls
          </ButtonLink>
        </div>
      </div>
    </Card>
  );
}
