import type { ShownPrediction } from '@pullbook/views';
import styles from './predictions.module.css';

/** What was predicted before the pulls, beside what came out. */
export function PredictionLines({ lines }: { lines: readonly ShownPrediction[] }) {
  return (
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
  );
}
