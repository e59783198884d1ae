import { type ReactNode, useId } from 'react';
import styles from './card.module.css';

/** A panel of a page with its heading. */
export function Card({
  title,
  beside,
  children,
}: {
  title: string;
  beside?: ReactNode;
  children: ReactNode;
}) {
  const id = useId();
  return (
    <section className={styles.card} aria-labelledby={id}>
      {beside === undefined ? (
        <h2 id={id}>{title}</h2>
      ) : (
        <div className={styles.head}>
          <h2 id={id}>{title}</h2>
          {beside}
        </div>
      )}
      {children}
    </section>
  );
}

/** A panel without a heading. */
export function Panel({ children }: { children: ReactNode }) {
  return <div className={styles.card}>{children}</div>;
}
