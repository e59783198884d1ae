import type { Pull } from '@pullbook/core/pull';
import type { TrialAnswer, TrialPull } from '@pullbook/core/trial';
import { audienceWords, heldBack, heldBackInBundle } from '../audience.ts';
import { counted, listed } from '../wording.ts';
import type { Leaving } from './model.ts';

const WHY_OUT = { rejected: 'rejected', 'warm-up': 'a warm-up' } as const;

/** What would leave the shop if a trial were published: what is not for everyone, which pulls, and what else is in it. */
export function leaving(answer: TrialAnswer): Leaving {
  const { trial, pulls, combinations } = answer;
  const named = trial.pulls.flatMap((one) => {
    const pull = pulls.get(one.pullId);
    return pull === undefined ? [] : [{ ...one, pull }];
  });
  const shown = named.filter(({ role }) => role === 'counted').map(({ pull }) => pull);
  return {
    heldBack: heldBack(answer),
    heldBackInBundle: heldBackInBundle(answer),
    pulls: shown.map(({ id, name, audience }) => ({ id, name, audience: audienceWords(audience) })),
    leftOut: named.flatMap(({ role, reason, pull: { id, name } }) =>
      role === 'counted' ? [] : [{ id, name, why: [WHY_OUT[role], reason].filter(Boolean).join(': ') }],
    ),
    contents: contentsOf(
      named,
      trial.combinations.flatMap((one) => combinations.get(one.combinationId) ?? []),
    ),
  };
}

function contentsOf(
  named: readonly (TrialPull & { pull: Pull })[],
  combinations: readonly { name: string }[],
): string[] {
  const pulls = named.map(({ pull }) => pull);
  const others = named.filter(({ role }) => role !== 'counted').map(({ pull }) => pull.name);
  const shown = pulls.length - others.length;
  const operators = pulls.filter(({ operator }) => operator !== null).length;
  const noted = pulls.filter(({ notes }) => notes.length > 0).length;
  const files = pulls.filter(({ fileHash }) => fileHash !== null).length;
  return [
    shown > 0 ? `Curves and figures of ${counted(shown, 'pull')}, with weather, days and cells.` : '',
    combinations.length > 0
      ? `What is on the sheets of ${listed(combinations.map(({ name }) => name))}.`
      : '',
    'The shop’s name and mark, where they are set.',
    others.length > 0
      ? `In a bundle: also ${listed(others)}, which ${others.length === 1 ? 'does' : 'do'} not count, with the curves.`
      : '',
    files > 0
      ? `In a bundle: ${counted(files, 'original file')} with all that the loggers wrote into them.`
      : '',
    noted > 0 ? `In a bundle: the notes on ${counted(noted, 'pull')}.` : '',
    operators > 0 ? `In a bundle: who made ${counted(operators, 'pull')}.` : '',
    'In a bundle: what was predicted, silenced and published of it before.',
  ].filter(Boolean);
}
