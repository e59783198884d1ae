import { useNavigate } from '@tanstack/react-router';
import { type DragEvent, type FormEvent, useRef, useState } from 'react';
import { type NewMap, useAddMap } from '../../api/maps.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { TextArea, TextField } from '../../parts/Field.tsx';
import { OneOf } from '../../parts/OneOf.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './maps.module.css';
import { RatedFields } from './RatedFields.tsx';
import { BLANK_RATED, ratedText } from './rated-text.ts';

/** Puts a map into the book: a table of points as open CSV, or one rated point. */
export function AddMap() {
  const [form, setForm] = useState<'points' | 'rated'>('points');
  const [name, setName] = useState('');
  const [text, setText] = useState('');
  const [fileName, setFileName] = useState<string | undefined>(undefined);
  const [rated, setRated] = useState(BLANK_RATED);
  const field = useRef<HTMLTextAreaElement>(null);
  const navigate = useNavigate();
  const add = useAddMap();

  async function take(file: File | undefined) {
    if (file === undefined) return;
    setForm('points');
    setText(await file.text());
    setFileName(file.name);
    add.reset();
  }

  function drop(event: DragEvent) {
    if (!event.dataTransfer.types.includes('Files')) return;
    // Elsewhere a dropped file is pulls.
    event.preventDefault();
    void take(event.dataTransfer.files[0]);
  }

  function keep(event: FormEvent) {
    event.preventDefault();
    const map: NewMap = {
      text: form === 'points' ? text : ratedText(rated),
      ...(name.trim() === '' ? {} : { name: name.trim() }),
      ...(form === 'points' && fileName !== undefined ? { fileName } : {}),
    };
    add.mutate(map, { onSuccess: ({ id }) => void navigate({ to: '/maps/$id', params: { id } }) });
  }

  function goTo(line: number) {
    const lines = text.split('\n');
    const start = lines.slice(0, line - 1).join('\n').length + (line > 1 ? 1 : 0);
    field.current?.focus();
    field.current?.setSelectionRange(start, start + (lines[line - 1]?.length ?? 0));
  }

  return (
    <Card title="Add a map">
      <form className={styles.form} onSubmit={keep} onDrop={drop}>
        <OneOf
          title="What you have"
          chosen={form}
          options={[
            { value: 'points', text: 'A table of points' },
            { value: 'rated', text: 'One rated point' },
          ]}
          onChoose={(chosen) => {
            add.reset();
            setForm(chosen);
          }}
        />
        <TextField
          label="Name"
          help={
            form === 'points'
              ? 'Sheets name their map by it. Blank: as the file has it.'
              : 'Sheets name their map by it.'
          }
          placeholder="shop blower no. 2"
          required={form === 'rated'}
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
        {form === 'points' ? (
          <>
            <TextField
              label="A CSV file"
              type="file"
              accept=".csv,.txt,.tsv,text/csv,text/plain"
              help="Chosen or dropped here, or its text pasted below."
              onChange={(event) => void take(event.target.files?.[0])}
            />
            <div className={styles.text}>
              <TextArea
                ref={field}
                label="The table"
                help="First the air it is corrected to, then one row a point with units in the heading. An efficiency column may be left out."
                placeholder={EXAMPLE}
                rows={Math.min(24, Math.max(9, text.split('\n').length + 1))}
                spellCheck={false}
                required
                value={text}
                onChange={(event) => {
                  setText(event.target.value);
                  add.reset();
                }}
              />
            </div>
          </>
        ) : (
          <RatedFields rated={rated} onRated={(change) => setRated({ ...rated, ...change })} />
        )}
        <Trouble of={add.error} {...(form === 'points' ? { goTo } : {})} />
        <div>
          <Button look="main" type="submit" isDisabled={add.isPending}>
            Add the map
          </Button>
        </div>
      </form>
    </Card>
  );
}

const EXAMPLE = `# name: shop blower no. 2
# reference pressure: 100 kPa
# reference temperature: 25 °C
flow [kg/s],pressure ratio,speed [rpm],efficiency [%]
0.21,1.62,40000,71
0.26,1.60,40000,75`;
