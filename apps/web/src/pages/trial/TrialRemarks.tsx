import type { TrialPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import styles from './trial.module.css';

/** More notes than this are folded: cautions must not drown in them. */
const UNFOLDED = 2;

/** What computing had to say: cautions first and open, many notes folded. */
export function TrialRemarks({ remarks }: { remarks: TrialPage['remarks'] }) {
  if (remarks.length === 0) return null;
  const notes = remarks.filter(({ level }) => level === 'note');
  const grave = remarks.filter(({ level }) => level !== 'note');
  const isFolded = notes.length > UNFOLDED;
  return (
    <Card title="Remarks">
      <Remarks remarks={isFolded ? grave : [...grave, ...notes]} />
      {isFolded && (
        <details className={styles.notesFolded}>
          <summary>{notes.length} notes</summary>
          <Remarks remarks={notes} />
        </details>
      )}
    </Card>
  );
}
