import { Link } from '@tanstack/react-router';
import type { HistoryStep } from '../../api/edge.ts';
import { Button } from '../../parts/Button.tsx';
import { StepChanges } from '../../parts/StepChanges.tsx';
import { momentHere } from '../../view/moment-here.ts';
import styles from './history.module.css';

/** One step: what, why, what changed, and its undo. That of the newest stands out: it is the one most often wanted. */
export function HistoryStepView({
  step,
  isNewest,
  onUndo,
  isUndoing,
}: {
  step: HistoryStep;
  isNewest: boolean;
  onUndo: () => void;
  isUndoing: boolean;
}) {
  return (
    <li className={styles.step} data-undone={step.isUndone}>
      <div>
        <p className={styles.words}>
          {step.words}
          {step.isUndone && <span className={styles.state}>undone</span>}
        </p>
        {step.reason !== '' && <p className={styles.reason}>{step.reason}</p>}
        <StepChanges changes={step.changes} />
        <p className={styles.at}>
          <time dateTime={step.at}>{momentHere(step.at)}</time>
          {step.thing !== null && <ToThing thing={step.thing} />}
        </p>
      </div>
      {step.canUndo && (
        <Button
          look={isNewest ? 'plain' : 'quiet'}
          onPress={onUndo}
          isDisabled={isUndoing}
          aria-label={step.isUndoing ? `Do it again: ${step.words}` : `Undo: ${step.words}`}
        >
          {step.isUndoing ? 'Do it again' : 'Undo'}
        </Button>
      )}
    </li>
  );
}

function ToThing({ thing: { kind, id } }: { thing: NonNullable<HistoryStep['thing']> }) {
  const params = { id };
  if (kind === 'pull')
    return (
      <Link to="/pulls/$id" params={params}>
        To the pull
      </Link>
    );
  if (kind === 'trial')
    return (
      <Link to="/trials/$id" params={params}>
        To the trial
      </Link>
    );
  return (
    <Link to="/combinations/$id" params={params}>
      To the combination
    </Link>
  );
}
