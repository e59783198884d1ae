import type { TrialPage } from '@pullbook/views';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { pullsOfQuestion } from '../../api/questions.ts';
import { useLooked } from '../../api/use-looked.ts';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { Choice } from '../../parts/Field.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { useChangeTrial } from './change-trial.ts';

/** Takes further pulls of the trial's combinations into it. */
export function ChoosePulls({ page, onClose }: { page: TrialPage; onClose: () => void }) {
  const combination = page.combinations.map(({ id }) => id);
  const pulls = useQuery(pullsOfQuestion({ combination }, useViewChoices()));
  const [taken, setTaken] = useState<readonly string[]>([]);
  const change = useChangeTrial(page.id);
  const looked = useLooked('trial', page.id);

  const keyOf = new Map(page.combinations.map((one) => [one.id, one.key]));
  const inTrial = new Set(page.evidence.map((row) => row.pullId));
  const others = (pulls.data ?? []).filter(
    (pull) => pull.combinationId !== null && keyOf.has(pull.combinationId) && !inTrial.has(pull.id),
  );

  function keep() {
    const more = others
      .filter((pull) => taken.includes(pull.id))
      .map((pull) => ({
        pullId: pull.id,
        key: keyOf.get(pull.combinationId!)!,
        role: 'counted' as const,
        reason: null,
      }));
    change.mutate({ pulls: more, reason: 'more pulls taken in', stamp: looked }, { onSuccess: onClose });
  }

  return (
    <Dialog title="Take more pulls" open onClose={onClose}>
      {pulls.isPending && <Waiting />}
      <Trouble of={pulls.error} />
      <ActTrouble act={change} onDone={onClose} onTheirs={onClose} />
      {pulls.data !== undefined && others.length === 0 && (
        <p>
          Every pull of these combinations is in the trial already. Add new pulls first; they can then be
          taken here.
        </p>
      )}
      <div>
        {others.map((pull) => (
          <Choice
            key={pull.id}
            kind="checkbox"
            checked={taken.includes(pull.id)}
            onChange={(event) =>
              setTaken(event.target.checked ? [...taken, pull.id] : taken.filter((id) => id !== pull.id))
            }
            help={[pull.recordedAt, pull.peakPower].filter((text) => text !== '').join(' · ')}
          >
            {keyOf.get(pull.combinationId!)} · {pull.name}
          </Choice>
        ))}
      </div>
      <DialogActions>
        {others.length > 0 ? (
          <Button look="main" onPress={keep} isDisabled={taken.length === 0 || change.isPending}>
            Take them
          </Button>
        ) : (
          <ButtonLink look="main" to="/add" search={{ combination: page.combinations[0]?.id }}>
            Add pulls
          </ButtonLink>
        )}
        <Button onPress={onClose}>Cancel</Button>
      </DialogActions>
    </Dialog>
  );
}
