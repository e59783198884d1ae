import type { TrialPage } from '@pullbook/views';
import { ChipOf } from '../../parts/Chips.tsx';
import styles from './trial.module.css';

/** The verdict of each gain in a line: its word, then the figures it is said with. */
export function Verdict({ verdicts }: { verdicts: TrialPage['verdicts'] }) {
  if (verdicts.length === 0) return null;
  return (
    <section className={styles.verdicts} aria-label="Verdict">
      {verdicts.map(({ key, name, chip, figures }) => (
        <p key={key}>
          {name !== '' && <strong>{name}</strong>}
          <ChipOf chip={chip} />
          <span>{figures}</span>
        </p>
      ))}
    </section>
  );
}
