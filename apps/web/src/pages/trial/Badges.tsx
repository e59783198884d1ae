import type { TrialPage } from '@pullbook/views';
import styles from './badges.module.css';

/** What the comparison can show for itself: each badge with a mark and a word, and why or why not. */
export function Badges({ of }: { of: TrialPage['badges'] }) {
  return (
    <ul className={styles.badges}>
      {of.map(({ id, label, earned, why }) => (
        <li key={id} className={earned ? styles.earned : styles.open}>
          <span className={styles.mark} aria-hidden="true">
            {earned ? '✓' : '–'}
          </span>
          <span>
            <strong>{label}</strong>
            {!earned && <span className={styles.not}> not earned</span>}
            <span className={styles.why}>{why}</span>
          </span>
        </li>
      ))}
    </ul>
  );
}
