import { type ReactNode, useEffect } from 'react';
import styles from './page-head.module.css';

/** Heading of a page, its main acts beside it; also the name of the browser's tab. */
export function PageHead({ title, children }: { title: string; children?: ReactNode }) {
  useTabName(title);
  return (
    <div className={styles.head}>
      <h1>{title}</h1>
      {children !== undefined && <div className={styles.actions}>{children}</div>}
    </div>
  );
}

/** Names the browser's tab. */
export function useTabName(title: string): void {
  useEffect(() => {
    document.title = `${title} · Pullbook`;
  }, [title]);
}

/** Parts of a page one below the other. */
export function Column({ children, narrow = false }: { children: ReactNode; narrow?: boolean }) {
  return <div className={`${styles.stack} ${narrow ? styles.narrow : ''}`}>{children}</div>;
}
