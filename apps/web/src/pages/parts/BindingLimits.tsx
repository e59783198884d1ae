import type { PartsPage } from '@pullbook/views/reach';
import { useEffect, useState } from 'react';
import { Card } from '../../parts/Card.tsx';
import { Choice } from '../../parts/Field.tsx';
import styles from './parts.module.css';

/** Which limits a plan may not pass; the others only caution. */
export function BindingLimits({
  binding,
  isRefused,
  onChange,
}: {
  binding: PartsPage['binding'];
  /** The last change was: what was ticked for it is not so. */
  isRefused: boolean;
  onChange: (id: string, binds: boolean) => void;
}) {
  return (
    <Card title="Limits that bind">
      <p className={styles.soft}>
        A plan may not pass these. What is not ticked is still looked at and cautioned. A maker’s limit is not
        made safe by taking its tick away.
      </p>
      <div className={styles.limits}>
        {binding.map((limit) => (
          <Limit key={limit.id} limit={limit} isRefused={isRefused} onChange={onChange} />
        ))}
      </div>
    </Card>
  );
}

/** What is ticked shows at once, not when the book has answered. */
function Limit({
  limit: { id, label, usually, here, where },
  isRefused,
  onChange,
}: {
  limit: PartsPage['binding'][number];
  isRefused: boolean;
  onChange: (id: string, binds: boolean) => void;
}) {
  const [ticked, setTicked] = useState<boolean | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what stands now is the answer to what was ticked, whichever it is.
  useEffect(() => setTicked(null), [here, isRefused]);
  const help = [
    ...(where === '' ? [] : [`Binds only ${where}.`]),
    ...(here === usually ? [] : [`The shop’s own: usually it ${usually ? 'binds' : 'only cautions'}.`]),
  ];
  return (
    <Choice
      kind="checkbox"
      checked={ticked ?? here}
      onChange={(event) => {
        setTicked(event.target.checked);
        onChange(id, event.target.checked);
      }}
      help={help.length === 0 ? undefined : help.join(' ')}
    >
      {label}
    </Choice>
  );
}
