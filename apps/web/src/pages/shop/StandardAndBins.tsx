import type { CorrectionId } from '@pullbook/core/air';
import type { SettingsReport } from '@pullbook/workshop';
import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { cellsQuestion, useKeepSettings } from '../../api/shop.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { SelectField, TextField } from '../../parts/Field.tsx';
import { STANDARDS } from '../../view/standards.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { Kept } from './Kept.tsx';
import styles from './shop.module.css';

const NONE = '';

export function StandardAndBins({ settings }: { settings: SettingsReport }) {
  const keep = useKeepSettings();
  const cells = useQuery(cellsQuestion(useViewChoices()));
  const kept = settings.binWidthRpm === null ? '' : `${settings.binWidthRpm} rpm`;
  const [width, setWidth] = useState(kept);
  const names = [...(cells.data?.cells ?? []), ...(cells.data?.undescribed ?? [])].map(({ name }) => name);
  const { cell } = settings;
  const known = cell === null || names.includes(cell) ? names : [...names, cell];

  function keepWidth(event: FormEvent) {
    event.preventDefault();
    keep.mutate({ binWidthRpm: width.trim() === '' ? 'adapted' : width, stamp: settings.stamp });
  }

  return (
    <Card title="Standard, bins and cell">
      <div className={styles.form}>
        <SelectField
          label="Power and torque by"
          help="A new trial starts with it, and a pull is first shown by it. Trials that stand keep their own."
          value={settings.correction}
          options={[...STANDARDS]}
          onChange={(event) => keep.mutate({ correction: event.target.value as CorrectionId })}
        />
        <form className={styles.beside} onSubmit={keepWidth}>
          <TextField
            label="Bin width"
            help="Blank: adapted to the sampling. A width set on a pull itself goes before it; a comparison uses the widest of its pulls for all."
            placeholder="adapted"
            value={width}
            onChange={(event) => setWidth(event.target.value)}
          />
          <Button type="submit">Keep the width</Button>
        </form>
        <SelectField
          label="Cell of new pulls"
          help="Stands where nothing else is said of a pull."
          value={cell ?? NONE}
          options={[{ value: NONE, text: 'None' }, ...known.map((name) => ({ value: name, text: name }))]}
          onChange={(event) => keep.mutate({ cell: event.target.value || null })}
        />
        <Kept act={keep} onTheirs={() => setWidth(kept)} />
      </div>
    </Card>
  );
}
