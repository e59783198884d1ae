import type { TrialPage } from '@pullbook/views';
import { useState } from 'react';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { PredictDialog } from './PredictDialog.tsx';
import { PredictionLines } from './PredictionLines.tsx';
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
        <PredictionLines lines={lines} />
      )}
      {unpulled.length > 0 && (
        <div className={cards.foot}>
          <Button small onPress={() => setOpen(true)}>
            Predict before the pull
          </Button>
          {page.isSupercharged && (
            <ButtonLink small to="/trials/$id/match" params={{ id: page.id }}>
              What the match foretells
            </ButtonLink>
          )}
        </div>
      )}
      {open && <PredictDialog page={page} onClose={() => setOpen(false)} />}
    </Card>
  );
}
