/** What is known of a thing, a line each: what it is, and its value. `className`: how the page lays them out. */
export function Facts({
  facts,
  className,
}: {
  facts: readonly { label: string; value: string }[];
  className: string | undefined;
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
