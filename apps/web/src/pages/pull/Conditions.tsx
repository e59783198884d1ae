import type { PullPage } from '@pullbook/views';
import { useKey } from '../../keys/use-key.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Facts } from '../../parts/Facts.tsx';
import styles from './pull.module.css';

/** What was written down about the pull. */
export function Conditions({ page, onAmend }: { page: PullPage; onAmend: () => void }) {
  useKey('change', onAmend);
  return (
    <Card
      title="Conditions"
      beside={
        <Button small look="quiet" shortcut="change" onPress={onAmend}>
          Amend
        </Button>
      }
    >
      <Facts facts={page.conditions} className={styles.rows} />
    </Card>
  );
}
