import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import type { ReadFileReport } from '../../api/edge.ts';
import styles from './add-pulls.module.css';

/** How the file is laid out, in a sentence. */
export function Layout({ report }: { report: ReadFileReport }) {
  const { layout, rowCount, groups } = report;
  const delimiter = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar', ' ': 'space' }[
    layout.delimiter
  ];
  return (
    <p className={styles.facts}>
      {rowCount === 1 ? '1 row' : `${rowCount} rows`}, {report.columns.length} columns, parted by{' '}
      {delimiter ?? layout.delimiter}, decimal {layout.decimalMark === ',' ? 'comma' : 'point'},{' '}
      {layout.encoding}.
      {groups.length > 1 && ` ${groups.length} pulls in it: ${groups.map((group) => group.name).join(', ')}.`}
    </p>
  );
}

export function PullLinks({ pulls }: { pulls: { id: string; name: string }[] }) {
  return pulls.map((pull, index) => (
    <span key={pull.id}>
      {index > 0 && ', '}
      <Link to="/pulls/$id" params={{ id: pull.id }}>
        {pull.name}
      </Link>
    </span>
  ));
}

/** Parts to look at: open where something is to be confirmed, folded where nothing is asked. */
export function Look({ open, title, children }: { open: boolean; title: string; children: ReactNode }) {
  if (open) return children;
  return (
    <details className={styles.look}>
      <summary>{title}</summary>
      <div className={styles.looked}>{children}</div>
    </details>
  );
}
