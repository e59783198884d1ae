import type { PullPage } from '@pullbook/views';
import styles from './pull.module.css';

/** What of the recording does not count, and why: by the numbers that the picture has it by. */
export function CutsAndSpikes({
  page: { cuts, spikes },
  over,
}: {
  page: Pick<PullPage, 'cuts' | 'spikes'>;
  over: 'time' | 'speed';
}) {
  return (
    <div className={styles.cuts}>
      {cuts.length > 0 && (
        <section>
          <h3>What was cut, and why</h3>
          <ol>
            {cuts.map((cut) => (
              <li key={cut}>{cut}</li>
            ))}
          </ol>
          <p className={styles.help}>
            {over === 'speed'
              ? 'Drawn faint. Over time each stretch has its number.'
              : 'Drawn faint, in the shade, with these numbers.'}
          </p>
        </section>
      )}
      {spikes.length > 0 && (
        <section>
          <h3>Rows that stand out</h3>
          <ul className={styles.lines}>
            {spikes.map((spike) => (
              <li key={spike}>{spike}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
