import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  airOfViewedPull,
  baselineFromPulls,
  fitMap,
  matchInputOf,
  type ViewedPull,
} from '@pullbook/core/airpath';
import type { Combination } from '@pullbook/core/combination';
import { boostedPullOf, type FitTarget } from '@pullbook/core/fit';
import { defaultRecipe, viewPull } from '@pullbook/core/pull';
import type { Result } from '@pullbook/core/remark';
import { DEMO_SEED, demoScenario } from '@pullbook/demo';
import { openBook } from '@pullbook/store';
import { makeDemoBook } from '@pullbook/workshop';

/** The demo's combinations with their counted pulls, as observed, in the order they were made. */
export async function demoPulls(
  seed: number = DEMO_SEED,
): Promise<{ combination: Combination; pulls: ViewedPull[] }[]> {
  const folder = await mkdtemp(join(tmpdir(), 'pullbook-demo-match-'));
  try {
    await makeDemoBook(join(folder, 'book'), seed);
    const book = await openBook(join(folder, 'book'));
    const combinations = await book.combinations();
    const trials = await book.trials();
    const counted = new Set(
      trials.flatMap(({ pulls }) =>
        pulls.filter(({ role }) => role === 'counted').map(({ pullId }) => pullId),
      ),
    );
    const heads = await book.pullHeads();
    const pulls = await book.pulls(heads.map(({ id }) => id).filter((id) => counted.has(id)));
    await book.close();
    return combinations.map((combination) => ({
      combination,
      pulls: pulls
        .filter(({ combinationId }) => combinationId === combination.id)
        .sort((one, other) => (one.recordedAt ?? '').localeCompare(other.recordedAt ?? ''))
        .map((pull) => ({ pull, view: viewPull(pull, defaultRecipe('observed')) })),
    }));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

export function taken<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.remarks.map(({ message }) => message).join(' '));
  return result.value;
}

/** A boosted combination's pulls with the match that each is held against, on the naturally aspirated pulls and the demo's map. */
export function targetsOf(
  { combination, pulls }: { combination: Combination; pulls: readonly ViewedPull[] },
  bare: readonly ViewedPull[],
  seed: number = DEMO_SEED,
): FitTarget[] {
  const [invented] = demoScenario(seed).maps;
  const map = taken(fitMap({ ...invented!, id: 'map of the demo' }));
  const baseline = taken(baselineFromPulls(bare, combination.sheet));
  return pulls.map((viewed) => {
    const ready = taken(
      matchInputOf({
        sheet: combination.sheet,
        baseline,
        map,
        air: taken(airOfViewedPull(viewed)),
        tune: viewed.pull.tune,
        places: viewed.pull.places,
      }),
    );
    return { ...ready, pull: taken(boostedPullOf(viewed, combination.sheet)) };
  });
}
