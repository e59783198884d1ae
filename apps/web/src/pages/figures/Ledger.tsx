import type { PredictionLedger } from '@pullbook/views';
import { Link } from '@tanstack/react-router';
import styles from './figures.module.css';

/** Every prediction beside what came out of it. */
export function Ledger({ ledger }: { ledger: PredictionLedger }) {
  return (
    <>
      <p className={styles.tally}>{ledger.tally}</p>
      {ledger.lines.length === 0 && (
        <p className={styles.soft}>A trial’s page takes one while a combination is not pulled yet.</p>
      )}
      <ul className={styles.lines}>
        {ledger.lines.map(({ id, trialId, question, about, said, cameOut, basis, at }) => (
          <li key={id}>
            <p>
              <Link className={styles.link} to="/trials/$id" params={{ id: trialId }}>
                {question}
              </Link>
            </p>
            <p>
              <strong>{about}</strong>: {said}. Came out: {cameOut}.
            </p>
            <p className={styles.soft}>
              {basis} · {at}
            </p>
          </li>
        ))}
      </ul>
    </>
  );
}
