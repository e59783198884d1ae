import { Fragment, type ReactNode } from 'react';
import { useWide } from '../view/use-wide.ts';
import styles from './two-columns.module.css';

/**
 * Parts of a page by name. Where there is room: `main` and `side` next to each other. Where there is none: one below
 * the other as `narrow` has them, so that eye, ear and Tab key meet them in one order.
 */
export function TwoColumns<Name extends string>({
  parts,
  main,
  side,
  narrow,
  below = [],
  even = false,
}: {
  parts: Record<Name, ReactNode>;
  main: readonly Name[];
  side: readonly Name[];
  narrow: readonly Name[];
  /** Under both columns, as wide as they are together. */
  below?: readonly Name[];
  /** The side has pictures of its own and is nearly as wide. */
  even?: boolean;
}) {
  const column = (names: readonly Name[]) => (
    <div className={styles.column}>
      {names.map((name) => (
        <Fragment key={name}>{parts[name]}</Fragment>
      ))}
    </div>
  );
  if (!useWide()) return column(narrow);
  return (
    <>
      <div className={even ? styles.even : styles.columns}>
        {column(main)}
        {column(side)}
      </div>
      {below.length > 0 && <div className={styles.below}>{column(below)}</div>}
    </>
  );
}
