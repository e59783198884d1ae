import { createContext, type ReactNode, useContext } from 'react';
import styles from './add-pulls.module.css';
import type { FileDetails } from './file-details.ts';

type TextName = {
  [Name in keyof FileDetails]: FileDetails[Name] extends string ? Name : never;
}[keyof FileDetails];

/** What the fields stand beside: another pull, or the same one as it is in the book. `words`: `in Pull 6`. */
export interface Before {
  words: string;
  details: Partial<FileDetails>;
}

const BeforeContext = createContext<Before | null>(null);

export function BesideBefore({ before, children }: { before: Before | null; children: ReactNode }) {
  return <BeforeContext value={before}>{children}</BeforeContext>;
}

/** Marks a field that differs from what stood before: an edge, and words in the place of its help. */
export function Marked({
  name,
  value,
  shown = (text) => text,
  children,
}: {
  name: TextName;
  value: string;
  /** How a value is called to a person. */
  shown?: (value: string) => string;
  /** The field; `help` is missing where nothing differs. */
  children: (help: { help?: ReactNode }) => ReactNode;
}) {
  const before = useContext(BeforeContext);
  const was = before?.details[name];
  const differs = before !== null && was !== undefined && was !== value;
  const words = differs ? `${was === '' ? 'Blank' : shown(was)} ${before.words}.` : undefined;
  // The same element either way: the field must not lose the focus at the first letter typed.
  return (
    <div className={differs ? styles.differs : styles.same}>
      {children(words === undefined ? {} : { help: words })}
    </div>
  );
}
