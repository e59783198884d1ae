import styles from './step-changes.module.css';

/** What one step changed, field by field: before and after. */
export function StepChanges({ changes }: { changes: { label: string; before: string; after: string }[] }) {
  if (changes.length === 0) return null;
  return (
    <dl className={styles.changes}>
      {changes.map(({ label, before, after }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            <del>{before === '' ? 'nothing' : before}</del> → <ins>{after === '' ? 'nothing' : after}</ins>
          </dd>
        </div>
      ))}
    </dl>
  );
}
