import type { TrialPage } from '@pullbook/views';
import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { PredictDialog } from './PredictDialog.tsx';
import styles from './predictions.module.css';
import cards from './trial.module.css';

/** What was predicted before the pulls, beside what came out; and a form while something still can be. */
export function Predictions({ page }: { page: TrialPage }) {
  const [open, setOpen] = useState(false);
  const { lines, open: unpulled } = page.predictions;
  if (lines.length === 0 && unpulled.length === 0) return null;
  return (
    <Card title="Predictions">
      {lines.length === 0 ? (
        <p className={styles.soft}>
          Write down what you expect before it is pulled: it is kept unaltered beside what comes out.
        </p>
      ) : (
        <ul className={styles.lines}>
          {lines.map(({ id, key, said, basis, at, cameOut, outcome }) => (
            <li key={id}>
              <p className={styles.said}>
                {key}: {said}
              </p>
              <p className={outcome === 'open' ? styles.soft : styles.cameOut}>Came out: {cameOut}</p>
              <p className={styles.soft}>
                {basis} · {at}
              </p>
            </li>
          ))}
        </ul>
      )}
      {unpulled.length > 0 && (
        <div className={cards.foot}>
          <Button small onPress={() => setOpen(true)}>
            Predict before the pull
          </Button>
        </div>
      )}
      {open && <PredictDialog page={page} onClose={() => setOpen(false)} />}
    </Card>
  );
}
