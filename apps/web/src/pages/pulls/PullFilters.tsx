import { useQuery } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { combinationsQuestion, enginesQuestion } from '../../api/questions.ts';
import { Button } from '../../parts/Button.tsx';
import { engineChoices } from '../../parts/engine-choices.ts';
import { SelectField, TextField } from '../../parts/Field.tsx';
import type { PullsSearch } from '../../search.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './pulls.module.css';

const ALL = { value: '', text: 'All' };

/**
 * Filters that narrow a list of pulls, and their order, beside the field to find by. Unknown stands apart and is never
 * taken for no.
 */
export function PullFilters({
  find,
  search,
  cells,
  onAsk,
}: {
  find: ReactNode;
  search: PullsSearch;
  cells: readonly string[];
  onAsk: (change: PullsSearch) => void;
}) {
  const { find: _, page: __, sort, ...filters } = search;
  const active = Object.values(filters).filter((value) => value !== undefined).length;
  const [open, setOpen] = useState(active > 0);
  return (
    <div className={styles.filters}>
      <div className={styles.head}>
        {find}
        <Button onPress={() => setOpen(!open)} aria-expanded={open} aria-controls="filters">
          {active === 0 ? 'Filter' : `Filter: ${active} set`}
        </Button>
        {active > 0 && (
          <Button
            look="quiet"
            onPress={() =>
              onAsk(Object.fromEntries(Object.keys(filters).map((name) => [name, undefined])) as PullsSearch)
            }
          >
            Take all filters away
          </Button>
        )}
        <div className={styles.order}>
          <SelectField
            label="Order"
            value={sort ?? ''}
            onChange={(event) => onAsk({ sort: (event.target.value || undefined) as PullsSearch['sort'] })}
            options={[
              { value: '', text: 'Added last first' },
              { value: 'power', text: 'Most power first' },
              { value: 'name', text: 'By name' },
            ]}
          />
        </div>
      </div>
      <div id="filters" className={styles.fields} hidden={!open}>
        {open && <FilterFields search={search} cells={cells} onAsk={onAsk} />}
      </div>
    </div>
  );
}

function FilterFields({
  search,
  cells,
  onAsk,
}: {
  search: PullsSearch;
  cells: readonly string[];
  onAsk: (change: PullsSearch) => void;
}) {
  const combinations = useQuery(combinationsQuestion());
  const engines = useQuery(enginesQuestion());
  const { units } = useViewChoices();
  const power = units === 'us' ? 'hp' : 'kW';
  const chosen = (name: keyof PullsSearch, label: string, options: { value: string; text: string }[]) => (
    <SelectField
      label={label}
      value={String(search[name] ?? '')}
      onChange={(event) => onAsk({ [name]: event.target.value || undefined })}
      options={[ALL, ...options]}
    />
  );
  const typed = (name: keyof PullsSearch, label: string, type: 'text' | 'date') => (
    <TextField
      label={label}
      type={type}
      {...(type === 'text' ? { inputMode: 'decimal' as const } : {})}
      value={String(search[name] ?? '')}
      onChange={(event) => onAsk({ [name]: event.target.value || undefined })}
    />
  );
  return (
    <>
      {chosen('combination', 'Combination', [
        { value: 'none', text: 'Unknown: none said' },
        ...(combinations.data ?? []).map((one) => ({
          value: one.id,
          text: `${one.name} · ${one.engineName}`,
        })),
      ])}
      {chosen('engine', 'Engine', engineChoices(engines.data ?? []))}
      {chosen(
        'cell',
        'Cell',
        cells.map((cell) => ({ value: cell, text: cell })),
      )}
      {typed('fromDay', 'From day', 'date')}
      {typed('toDay', 'To day', 'date')}
      {typed('powerFrom', `Power from, ${power}`, 'text')}
      {typed('powerTo', `Power to, ${power}`, 'text')}
      {chosen('boosted', 'Supercharged', [
        { value: 'yes', text: 'Yes' },
        { value: 'no', text: 'No' },
        { value: 'unknown', text: 'Unknown' },
      ])}
      {chosen('outcome', 'Ended', [
        { value: 'completed', text: 'Completed' },
        { value: 'aborted', text: 'Aborted' },
      ])}
      {chosen('inTrial', 'In a trial', [
        { value: 'yes', text: 'Yes' },
        { value: 'no', text: 'No' },
      ])}
      {chosen('invented', 'Invented data', [
        { value: 'yes', text: 'Only these' },
        { value: 'no', text: 'Without these' },
      ])}
    </>
  );
}
