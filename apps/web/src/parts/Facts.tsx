import styles from './facts.module.css';

/** What is known of a thing, each what it is and its value, in columns. `className`: where a page lays them out otherwise. */
export function Facts({
  facts,
  className = styles.facts,
}: {
  facts: readonly { label: string; value: string }[];
  className?: string | undefined;
}) {
  return (
    <dl className={className}>
      {facts.map(({ label, value }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
