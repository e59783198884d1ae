import type { PullPage } from '@pullbook/views';
import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Facts } from '../../parts/Facts.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './pull.module.css';
import { TreatmentDialog } from './TreatmentDialog.tsx';
import { treatmentWords } from './treatment-words.ts';

/** How the recorded rows become the curve: what is counted, how wide the means are, which channel is late. */
export function HowItIsRead({ page }: { page: PullPage }) {
  const { decimalMark } = useViewChoices();
  const [open, setOpen] = useState(false);
  return (
    <Card
      title="How it is read"
      beside={
        <Button small look="quiet" aria-label="Change how it is read" onPress={() => setOpen(true)}>
          Change
        </Button>
      }
    >
      <Facts facts={treatmentWords(page, decimalMark)} className={styles.rows} />
      {open && <TreatmentDialog page={page} onClose={() => setOpen(false)} />}
    </Card>
  );
}
