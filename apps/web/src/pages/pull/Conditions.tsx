import type { PullPage } from '@pullbook/views';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import styles from './pull.module.css';

/** What was written down about the pull. */
export function Conditions({ page, onAmend }: { page: PullPage; onAmend: () => void }) {
  return (
    <Card
      title="Conditions"
      beside={
        <Button small look="quiet" onPress={onAmend}>
          Amend
        </Button>
      }
    >
      <dl className={styles.rows}>
        {page.conditions.map(({ label, value }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </Card>
  );
}
