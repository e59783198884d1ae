import type { ChosenRung } from '@pullbook/views/reach';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './reach.module.css';
import type { useReachActs } from './use-reach-acts.ts';

/** What can be done with the chosen rung: laid open, or made a combination of a trial with its pulls. */
export function RungActs({
  chosen: { rung, became },
  plan,
}: {
  chosen: ChosenRung;
  /** `null`: the search is not over. */
  plan: ReturnType<typeof useReachActs>['plan'] | null;
}) {
  if (rung.changes.length === 0 || (became === null && plan === null)) return null;
  return (
    <div className={styles.acts}>
      {became !== null ? (
        <ButtonLink to="/trials/$id/plan" params={{ id: became.trialId }}>
          Its trial and plan
        </ButtonLink>
      ) : (
        plan !== null && (
          <Button look="main" isDisabled={plan.isPending} onPress={() => plan.mutate(rung.id)}>
            {plan.isPending ? 'Planning …' : 'Plan this way'}
          </Button>
        )
      )}
      {plan?.error != null && <Trouble of={plan.error} />}
    </div>
  );
}
