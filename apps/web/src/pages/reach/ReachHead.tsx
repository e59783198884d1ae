import type { ReachPage } from '@pullbook/views/reach';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { Chips } from '../../parts/Chips.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import styles from './reach.module.css';

/** The answer in a sentence, with the way back to what was asked of; before there is one, the question. */
export function ReachHead({
  id,
  name,
  page,
  children,
}: {
  id: string | null;
  name: string;
  /** `null`: nothing was asked yet, or it cannot be. */
  page: ReachPage | null;
  children?: ReactNode;
}) {
  return (
    <header className={styles.head}>
      <p className={styles.question}>
        {id === null ? (
          name
        ) : (
          <Link to="/combinations/$id" params={{ id }}>
            {name}
          </Link>
        )}
      </p>
      <h1 className={styles.answer}>
        {page === null ? 'How does it make the power you want?' : <Sentence parts={page.sentence} />}
      </h1>
      {page !== null && (
        <>
          <Chips chips={page.chips} />
          <p className={styles.basis}>{page.basis}</p>
        </>
      )}
      {children}
    </header>
  );
}
