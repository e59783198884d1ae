import type { Chip } from '@pullbook/views';
import type { ReactNode } from 'react';
import styles from './chips.module.css';

/** Words of state in a row, with what follows them. */
export function Chips({ chips, children }: { chips: Chip[]; children?: ReactNode }) {
  if (chips.length === 0 && !children) return null;
  return (
    <div className={styles.row}>
      {chips.map((chip) => (
        <span key={chip.text} className={styles[chip.tone]}>
          {chip.text}
        </span>
      ))}
      {children}
    </div>
  );
}
