import { type MatchBundle, type WhatIfText, whatIfForm } from '@pullbook/views/match';
import { useMemo } from 'react';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { SelectField } from '../../parts/Field.tsx';
import { OneOf } from '../../parts/OneOf.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { FuelTried } from './FuelTried.tsx';
import styles from './match.module.css';
import { type OnWhatIf, WhatIfFields } from './WhatIfFields.tsx';

/** Another pulley, another cooler, another day: what is tried stands in the address and is worked out at once. */
export function WhatIfCard({
  bundle,
  text,
  onChange,
  onReset,
}: {
  bundle: MatchBundle;
  text: WhatIfText;
  onChange: OnWhatIf;
  onReset: () => void;
}) {
  const { units, decimalMark } = useViewChoices();
  const form = useMemo(
    () => whatIfForm(bundle, text, { units, decimalMark }),
    [bundle, text, units, decimalMark],
  );
  if (form === null) return null;
  const on = bundle.combinations.find(({ key }) => key === form.on);
  const isMoreTried = [...form.air, ...form.work, form.fuel, ...form.breathing].some(
    ({ isTried }) => isTried,
  );
  return (
    <Card
      title="What if"
      beside={
        <Button small onPress={onReset} isDisabled={!form.isTried}>
          As it is
        </Button>
      }
    >
      <div className={styles.whatIf}>
        {form.combinations.length > 1 && (
          <SelectField
            label="Tried on"
            value={form.on}
            options={form.combinations.map(({ key, name }) => ({ value: key, text: `${key}, ${name}` }))}
            onChange={(event) => onChange('on', event.target.value)}
          />
        )}
        <WhatIfFields fields={form.drive} onChange={onChange} />
        <div className={styles.cooler}>
          <OneOf
            title="Cooler"
            chosen={form.cooler.chosen}
            options={[
              { value: 'as it is', text: `As it is: ${form.cooler.stands}` },
              { value: 'none', text: 'None' },
              { value: 'other', text: 'Another' },
            ]}
            onChoose={(value) => onChange('cooler', value === 'as it is' ? undefined : value)}
          />
        </div>
        <WhatIfFields fields={form.cooler.fields} onChange={onChange} />
      </div>
      <details className={styles.more} open={isMoreTried || undefined}>
        <summary>Weather, spark and fuel, breathing</summary>
        <div className={styles.whatIf}>
          <WhatIfFields fields={form.air} onChange={onChange} />
          <WhatIfFields fields={form.work} onChange={onChange} />
          <FuelTried fuel={form.fuel} onChange={onChange} />
          <WhatIfFields fields={form.breathing} onChange={onChange} />
        </div>
      </details>
      {form.isTried && on !== undefined && (
        <div className={styles.ways}>
          <ButtonLink small look="quiet" to="/combinations/new" search={{ from: on.combinationId }}>
            Write it down: same as {on.key}, but …
          </ButtonLink>
        </div>
      )}
    </Card>
  );
}
