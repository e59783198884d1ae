import type { PartsPage } from '@pullbook/views/reach';
import { Card } from '../../parts/Card.tsx';
import { SelectField } from '../../parts/Field.tsx';
import styles from './parts.module.css';

/** What a change of a kind costs where its part says nothing. */
export function CostsOfKinds({
  costs,
  costClasses,
  onChange,
}: {
  costs: PartsPage['costs'];
  costClasses: PartsPage['costClasses'];
  onChange: (part: string, cost: number | undefined) => void;
}) {
  return (
    <Card title="What a change costs">
      <p className={styles.soft}>
        By kind of change, where the part itself has no class: another supercharger, a gain that was measured.
      </p>
      <div className={styles.costs}>
        {costs.map(({ part, label, cost }) => (
          <SelectField
            key={part}
            label={label}
            value={`${cost ?? ''}`}
            options={[
              { value: '', text: 'as is usual' },
              ...costClasses.map((one) => ({ value: `${one.cost}`, text: `${one.cost}: ${one.text}` })),
            ]}
            onChange={(event) =>
              onChange(part, event.target.value === '' ? undefined : Number(event.target.value))
            }
          />
        ))}
      </div>
    </Card>
  );
}
