import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { type FormEvent, useState } from 'react';
import { combinationsQuestion, pullsQuestion } from '../../api/questions.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { SelectField, TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './asked.module.css';
import { lastPulledFirst } from './last-pulled-first.ts';

/** Of which combination how much power is asked; the rest is asked where the answer stands. */
export function AskForm({ first }: { first: string | undefined }) {
  const view = useViewChoices();
  const navigate = useNavigate();
  const combinations = useQuery(combinationsQuestion());
  // What was only remembered has no day.
  const pulls = useQuery(pullsQuestion({}, view)).data?.rows ?? [];
  const newest = pulls.filter(({ recordedAt }) => recordedAt !== '');
  const [chosen, setChosen] = useState(first);
  const [power, setPower] = useState('');
  const choices = lastPulledFirst(combinations.data ?? [], newest);
  const id = choices.find((one) => one.id === chosen)?.id ?? choices[0]?.id;

  function submit(event: FormEvent) {
    event.preventDefault();
    if (id === undefined) return;
    void navigate({
      to: '/combinations/$id/reach',
      params: { id },
      search: power.trim() === '' ? {} : { power: power.trim() },
    });
  }

  if (combinations.data?.length === 0) {
    return (
      <p className={styles.none}>
        There is no combination to ask it of. Add a pull first: what an engine makes now is what every answer
        begins with.
      </p>
    );
  }
  return (
    <Card title="Ask">
      <Trouble of={combinations.error} />
      <form onSubmit={submit} className={styles.form}>
        <SelectField
          label="Of which combination"
          value={id ?? ''}
          onChange={(event) => setChosen(event.target.value)}
          options={choices.map((one) => ({ value: one.id, text: `${one.name} · ${one.engineName}` }))}
        />
        <TextField
          label="Power"
          placeholder={view.units === 'us' ? '520 hp' : '390 kW'}
          value={power}
          onChange={(event) => setPower(event.target.value)}
        />
        <Button look="main" type="submit">
          Find the ways
        </Button>
      </form>
    </Card>
  );
}
