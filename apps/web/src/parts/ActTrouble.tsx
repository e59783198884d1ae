import type { UseMutationResult } from '@tanstack/react-query';
import { bookChanged } from '../api/query-client.ts';
import { ApiTrouble } from '../api/request.ts';
import styles from './act-trouble.module.css';
import { Button } from './Button.tsx';
import { StepChanges } from './StepChanges.tsx';
import { Trouble } from './Trouble.tsx';

/**
 * What came of an act that was refused. Where another window wrote meanwhile, its change stands here beside what was
 * typed: both can be kept, or theirs alone.
 */
export function ActTrouble<Change extends { stamp?: string | undefined }>({
  act,
  onDone,
  onTheirs,
}: {
  act: UseMutationResult<unknown, Error, Change>;
  /** Yours was written too. */
  onDone: () => void;
  /** Theirs stands; what was typed is let go. */
  onTheirs: () => void;
}) {
  const { error, variables } = act;
  const meanwhile = error instanceof ApiTrouble ? error.meanwhile : null;
  if (meanwhile === null || variables === undefined) return <Trouble of={error} />;
  return (
    <section className={styles.meanwhile} role="alert" aria-label="Changed meanwhile">
      <p className={styles.title}>Changed meanwhile by another window or program</p>
      <ul className={styles.steps}>
        {meanwhile.since.map((step) => (
          <li key={step.uid}>
            <p>
              {step.words}
              {step.reason !== '' && ` · ${step.reason}`}
            </p>
            <StepChanges changes={step.changes} />
          </li>
        ))}
      </ul>
      <p>Nothing of yours was written yet, and what you typed is still here.</p>
      <div className={styles.buttons}>
        <Button
          onPress={() => act.mutate({ ...variables, stamp: meanwhile.stamp }, { onSuccess: onDone })}
          isDisabled={act.isPending}
        >
          Keep mine too
        </Button>
        <Button
          onPress={() => {
            onTheirs();
            void bookChanged();
          }}
        >
          Take theirs
        </Button>
      </div>
    </section>
  );
}
