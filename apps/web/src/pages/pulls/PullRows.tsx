import type { PullRow } from '@pullbook/views';
import { Link } from '@tanstack/react-router';
import { Chips } from '../../parts/Chips.tsx';
import styles from '../../parts/list.module.css';

/** Pulls as rows, each with a box to tick. */
export function PullRows({
  rows,
  ticked,
  onTick,
}: {
  rows: readonly PullRow[];
  ticked: readonly string[];
  onTick: (id: string, ticked: boolean) => void;
}) {
  return (
    <ul className={`${styles.list} ${styles.pulls}`}>
      {rows.map((pull) => (
        <li key={pull.id}>
          <label className={styles.tick}>
            <input
              type="checkbox"
              aria-label={`Compare ${pull.name}`}
              checked={ticked.includes(pull.id)}
              onChange={(event) => onTick(pull.id, event.target.checked)}
            />
          </label>
          <div>
            <Link className={styles.name} to="/pulls/$id" params={{ id: pull.id }}>
              {pull.name}
            </Link>
            <p className={styles.soft}>{pull.combinationName}</p>
            <Chips chips={pull.chips} />
          </div>
          <div>
            <p className={styles.figure}>{pull.peakPower}</p>
            <p className={styles.figure}>{pull.peakTorque}</p>
          </div>
          <div className={styles.soft}>
            <p>{pull.recordedAt}</p>
            <p>{[pull.cell, pull.standard].filter((text) => text !== '').join(' · ')}</p>
          </div>
        </li>
      ))}
    </ul>
  );
}
