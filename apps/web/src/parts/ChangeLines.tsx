import styles from './change-lines.module.css';

/** Lines in which two sheets differ, before and after. */
export function ChangeLines({
  lines,
}: {
  lines: { label: string; before: string; after: string; packageName: string | null }[];
}) {
  return (
    <ul className={styles.changes}>
      {lines.map(({ label, before, after, packageName }) => (
        <li key={label}>
          <span className={styles.label}>
            {label}
            {packageName !== null && ` · of ${packageName}`}
          </span>
          <span>
            <del>{before}</del> <span aria-hidden="true">→</span> <ins>{after}</ins>
          </span>
        </li>
      ))}
    </ul>
  );
}
