import type { StopCriterion } from '@pullbook/core/plan';
import type { PlanPage } from '@pullbook/views';
import { useState } from 'react';
import type { Stamped } from '../../api/edge.ts';
import { type PlanAsk, useKeepPlan } from '../../api/plan.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './plan.module.css';

const OWN = 'the shop’s own line';

/** The lines of the card, to be changed; they are kept with the plan. */
export function StopDialog({
  page,
  ask,
  onClose,
}: {
  page: Stamped<PlanPage>;
  ask: PlanAsk;
  onClose: () => void;
}) {
  const [lines, setLines] = useState<readonly StopCriterion[]>(page.stopCriteria);
  const keep = useKeepPlan(page.id);
  const change = (id: string, to: Partial<StopCriterion>) =>
    setLines(lines.map((line) => (line.id === id ? { ...line, ...to, source: OWN } : line)));
  const send = (stopCriteria: StopCriterion[] | null) =>
    keep.mutate({ ...ask, stopCriteria, stamp: page.stamp }, { onSuccess: onClose });
  return (
    <Dialog title="When to end a pull at once" open onClose={onClose} wide>
      <p>They are kept with the plan and printed on its sheet. {page.planningAid}</p>
      <ul className={styles.lines}>
        {lines.map((line) => (
          <li key={line.id}>
            <TextField
              label="What"
              value={line.label}
              onChange={(event) => change(line.id, { label: event.target.value })}
            />
            <TextField
              label="Limit"
              value={line.limit}
              onChange={(event) => change(line.id, { limit: event.target.value })}
            />
            <Button
              look="quiet"
              aria-label={`Take out ${line.label}`}
              onPress={() => setLines(lines.filter(({ id }) => id !== line.id))}
            >
              Take out
            </Button>
          </li>
        ))}
      </ul>
      <Trouble of={keep.error} />
      <DialogActions>
        <Button
          look="main"
          isDisabled={keep.isPending}
          onPress={() => send(lines.filter(({ label }) => label.trim() !== ''))}
        >
          Keep the lines
        </Button>
        <Button
          onPress={() => setLines([...lines, { id: crypto.randomUUID(), label: '', limit: '', source: OWN }])}
        >
          Add a line
        </Button>
        <Button onPress={() => send(null)}>As worked out</Button>
        <Button onPress={onClose}>Cancel</Button>
      </DialogActions>
    </Dialog>
  );
}
