import type { Chip } from '@pullbook/views';
import type { ReactNode } from 'react';
import styles from './chips.module.css';
import { VerdictShape } from './VerdictShape.tsx';

/** Words of state in a row, with what follows them. */
export function Chips({ chips, children }: { chips: Chip[]; children?: ReactNode }) {
  if (chips.length === 0 && !children) return null;
  return (
    <div className={styles.row}>
      {chips.map((chip) => (
        <ChipOf key={chip.text} chip={chip} />
      ))}
      {children}
    </div>
  );
}

/** One chip; a verdict is outlined and has its shape before its word. */
export function ChipOf({ chip }: { chip: Chip }) {
  if (chip.verdict === undefined) return <span className={styles[chip.tone]}>{chip.text}</span>;
  return (
    <span className={styles.verdict}>
      <VerdictShape word={chip.verdict} />
      {chip.text}
    </span>
  );
}
