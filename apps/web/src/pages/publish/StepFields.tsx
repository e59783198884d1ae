import type { KeyboardEvent } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Field.tsx';
import fieldStyles from '../../parts/field.module.css';
import styles from './clip.module.css';
import type { StepDraft } from './running-order.ts';

/** One step of the running order: whether it is shown, its title, how long it stands, its place. */
export function StepFields({
  step,
  number,
  isFirst,
  isLast,
  onStep,
  onMove,
}: {
  step: StepDraft;
  number: number;
  isFirst: boolean;
  isLast: boolean;
  onStep: (change: Partial<StepDraft>) => void;
  onMove: (by: -1 | 1) => void;
}) {
  const { id, name, isShown, whyNot, title, ownTitle, seconds, ownSeconds } = step;
  const nothing = whyNot !== '';
  function byKey(event: KeyboardEvent) {
    if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
    event.preventDefault();
    onMove(event.key === 'ArrowUp' ? -1 : 1);
  }
  return (
    <li className={styles.step} data-step={id} data-shown={isShown && !nothing} onKeyDown={byKey}>
      <span className={styles.number} aria-hidden="true">
        {number}
      </span>
      <Choice
        kind="checkbox"
        checked={isShown && !nothing}
        disabled={nothing}
        onChange={(event) => onStep({ isShown: event.target.checked })}
        {...(nothing && { help: whyNot })}
      >
        {name}
      </Choice>
      {!nothing && (
        <>
          <input
            type="text"
            className={fieldStyles.control}
            aria-label={`Title of ${name}`}
            maxLength={200}
            placeholder={ownTitle}
            value={title}
            onChange={(event) => onStep({ title: event.target.value })}
          />
          <label className={styles.seconds}>
            <input
              className={fieldStyles.control}
              inputMode="decimal"
              aria-label={`Seconds of ${name}`}
              placeholder={String(ownSeconds)}
              value={seconds}
              onChange={(event) => onStep({ seconds: event.target.value })}
            />
            s
          </label>
        </>
      )}
      <span className={styles.moves}>
        <Button
          look="quiet"
          aria-label={`${name} further up`}
          isDisabled={isFirst}
          onPress={() => onMove(-1)}
        >
          ↑
        </Button>
        <Button
          look="quiet"
          aria-label={`${name} further down`}
          isDisabled={isLast}
          onPress={() => onMove(1)}
        >
          ↓
        </Button>
      </span>
    </li>
  );
}
