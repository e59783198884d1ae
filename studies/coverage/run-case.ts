import type { Case } from './cases.ts';
import { chanceFor } from './chance.ts';
import { compared, judged, type Outcome } from './judge.ts';
import { simulate } from './simulate.ts';
import { addOutcome, emptyTally, type Tally } from './tally.ts';

/** Of the whole study; each stretch of each case has a stream of its own, named by both. */
export const SEED = 20261125;
/** Runs that share one stream. */
export const STRETCH = 250;

/** One stretch of a case: from its number alone, wherever and in whatever order it is run. */
export function runStretch(one: Case, stretch: number, runs = STRETCH): Tally {
  const chance = chanceFor(SEED, `${one.id}/${stretch}`);
  const tally = emptyTally();
  for (let run = 0; run < runs; run += 1) {
    const simulated = simulate(one.scene, chance);
    addOutcome(tally, outcomeOf(one, simulated));
  }
  return tally;
}

function outcomeOf({ scene, looks }: Case, simulated: ReturnType<typeof simulate>): Outcome {
  if (!looks) return judged(simulated, compared(simulated.pulls, scene.told, null));
  for (const count of looks.at) {
    const pulls = simulated.pulls.slice(0, count);
    const outcome = judged(simulated, compared(pulls, scene.told, looks.planned ? looks.at : null));
    if (outcome.clear === 1 || count === looks.at.at(-1)) return outcome;
  }
  throw new Error('A case with looks has none.');
}
