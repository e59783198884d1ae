import type { PartsPage } from '@pullbook/views/reach';
import { type FormEvent, useState } from 'react';
import { type PartsKind, useChangeParts, type WrittenPart } from '../../api/reach.ts';
import { Dialog } from '../../parts/Dialog.tsx';
import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { KeepEnd } from '../../parts/KeepEnd.tsx';
import { PART_FIELDS, type PartField } from './part-fields.ts';
import styles from './parts.module.css';
import { useLookedParts } from './use-looked-parts.ts';

const ROW_OF_SIZES: PartField[] = [
  { name: 'from', label: 'Or every size from', placeholder: '60 mm' },
  { name: 'to', label: 'to', placeholder: '120 mm' },
  { name: 'step', label: 'in steps of', placeholder: '2 mm' },
];

/** Adds a thing that can be bought, or writes it otherwise. What was typed stays until it is kept. */
export function PartDialog({
  title,
  kind,
  rows,
  row,
  costClasses,
  onClose,
}: {
  title: string;
  kind: PartsKind;
  rows: WrittenPart[];
  /** `null`: one more. */
  row: number | null;
  costClasses: PartsPage['costClasses'];
  onClose: () => void;
}) {
  const looked = useLookedParts();
  const [before] = useState(rows);
  const first = row === null ? {} : (before[row] ?? {});
  const [typed, setTyped] = useState<WrittenPart>({ cost: 1, ...first });
  const change = useChangeParts();
  const set = (name: string, value: string | number) => setTyped({ ...typed, [name]: value });
  const isPulley = kind === 'blowerPulleys' || kind === 'crankPulleys';
  const fields = [...PART_FIELDS[kind], ...(isPulley && row === null ? ROW_OF_SIZES : [])];

  function submit(event: FormEvent) {
    event.preventDefault();
    const part = Object.fromEntries(
      Object.entries(withFirstChoices(fields, typed)).filter(([, value]) => `${value ?? ''}`.trim() !== ''),
    );
    const parts = row === null ? [...before, part] : before.map((one, place) => (place === row ? part : one));
    change.mutate({ parts: () => ({ [kind]: parts }), stamp: looked }, { onSuccess: onClose });
  }

  return (
    <Dialog title={row === null ? `Add to: ${title}` : `Change in: ${title}`} open onClose={onClose}>
      <form onSubmit={submit} className={styles.form}>
        <Fields>
          {fields.map(({ name, label, placeholder, choices }) =>
            choices === undefined ? (
              <TextField
                key={name}
                label={label}
                placeholder={placeholder}
                value={`${typed[name] ?? ''}`}
                onChange={(event) => set(name, event.target.value)}
              />
            ) : (
              <SelectField
                key={name}
                label={label}
                value={`${typed[name] ?? choices[0]!.value}`}
                options={choices}
                onChange={(event) => set(name, event.target.value)}
              />
            ),
          )}
          <SelectField
            label="Cost"
            value={`${typed.cost}`}
            options={costClasses.map(({ cost, text }) => ({ value: `${cost}`, text: `${cost}: ${text}` }))}
            onChange={(event) => set('cost', Number(event.target.value))}
          />
          <TextField
            label="Where it is from"
            placeholder="a supplier’s list; blank: the shop’s own word"
            value={`${typed.source ?? ''}`}
            onChange={(event) => set('source', event.target.value)}
          />
        </Fields>
        <KeepEnd act={change} onClose={onClose} />
      </form>
    </Dialog>
  );
}

/** What a choice shows without being touched is chosen. */
function withFirstChoices(fields: readonly PartField[], typed: WrittenPart): WrittenPart {
  const chosen = fields.flatMap(({ name, choices }) =>
    choices === undefined ? [] : [[name, choices[0]!.value] as const],
  );
  return { ...Object.fromEntries(chosen), ...typed };
}
