import type { ShownRunningOrder } from '@pullbook/views/publish';
import { type FormEvent, useRef, useState } from 'react';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import { Button } from '../../parts/Button.tsx';
import { SelectField } from '../../parts/Field.tsx';
import { useChangeTrial } from '../trial/change-trial.ts';
import styles from './clip.module.css';
import {
  changedStep,
  draftOf,
  movedStep,
  type OrderDraft,
  orderFrom,
  SPEEDS,
  sameOrder,
  stepsWithoutSeconds,
} from './running-order.ts';
import { StepFields } from './StepFields.tsx';

/** What is shown in which order, under which titles and for how long. Kept with the trial: clip and presentation follow it. */
export function RunningOrderEditor({
  id,
  order,
  stamp,
}: {
  id: string;
  order: ShownRunningOrder;
  stamp: string;
}) {
  const [draft, setDraft] = useState<OrderDraft | null>(null);
  // What is typed is an answer to what stood here when the typing began, whatever the page shows meanwhile.
  const [looked, setLooked] = useState(stamp);
  const kept = draftOf(order);
  const shown = draft ?? kept;
  const change = useChangeTrial(id);
  const [moved, setMoved] = useState('');
  const list = useRef<HTMLOListElement>(null);
  const isChanged = draft !== null && !sameOrder(draft, kept);
  const without = stepsWithoutSeconds(shown);

  function write(next: OrderDraft) {
    if (draft === null) setLooked(stamp);
    setDraft(next);
  }

  function keep(event: FormEvent) {
    event.preventDefault();
    change.mutate(
      { runningOrder: orderFrom(shown), reason: 'running order', stamp: looked },
      { onSuccess: () => setDraft(null) },
    );
  }

  function move(place: number, by: -1 | 1) {
    const next = movedStep(shown, place, by);
    if (next === shown) return;
    write(next);
    const step = shown.steps[place]!;
    setMoved(`${step.name} is now number ${place + by + 1} of ${shown.steps.length}.`);
    // The step that moved keeps the hand on it.
    requestAnimationFrame(() =>
      list.current?.querySelector<HTMLElement>(`[data-step="${step.id}"] input[type=text]`)?.focus(),
    );
  }

  return (
    <form className={styles.order} onSubmit={keep} aria-label="Running order">
      <h3>Running order</h3>
      <p className={styles.soft}>
        Untick what is not to be shown. Alt with an arrow key moves a step; so do its buttons.
      </p>
      <ol className={styles.steps} ref={list}>
        {shown.steps.map((step, place) => (
          <StepFields
            key={step.id}
            step={step}
            number={place + 1}
            isFirst={place === 0}
            isLast={place === shown.steps.length - 1}
            onStep={(changed) => write(changedStep(shown, place, changed))}
            onMove={(by) => move(place, by)}
          />
        ))}
      </ol>
      <div className={styles.orderActs}>
        <SelectField
          label="Speed"
          value={String(shown.speed)}
          onChange={(event) => write({ ...shown, speed: Number(event.target.value) })}
          options={[...new Set([...SPEEDS, shown.speed])]
            .toSorted((a, b) => a - b)
            .map((speed) => ({
              value: String(speed),
              text: speed === 1 ? 'As worked out' : `${speed} times`,
            }))}
        />
        <Button type="submit" isDisabled={!isChanged || without.length > 0 || change.isPending}>
          Keep the order
        </Button>
        <Button
          look="quiet"
          isDisabled={change.isPending}
          onPress={() =>
            change.mutate(
              { runningOrder: null, reason: 'running order as worked out', stamp },
              { onSuccess: () => setDraft(null) },
            )
          }
        >
          Back to what was worked out
        </Button>
      </div>
      <p className={styles.soft} role="status">
        {without.length > 0
          ? `${without.map(({ name }) => name).join(', ')}: how many seconds? Write a number above 0.`
          : isChanged
            ? 'Not kept yet: the clip above is as it was kept.'
            : moved}
      </p>
      <ActTrouble act={change} onDone={() => setDraft(null)} onTheirs={() => setDraft(null)} />
    </form>
  );
}
