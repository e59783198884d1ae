import {
  criticalOfFamily,
  equivalentDegreesOfFreedom,
  errorOfLook,
  type GroupGain,
  lookAt,
  type ScatterComparison,
  type Spread,
} from '../scatter/index.ts';
import { bandsToCome } from './bands-to-come.ts';
import { ERROR } from './gain-of-design.ts';
import { oddsToSee } from './odds-to-see.ts';

/** What it would take to settle a gain. */
export interface Settling {
  /** Fewest more pulls of each of the two combinations; `null`: no number of up to six does. */
  morePulls: number | null;
  /** `set-up`: what is common to a set-up hides it, so the baseline must be fitted again. `too small`: it takes more pulls than are worth it. */
  because: 'settled' | 'pulls' | 'set-up' | 'too small';
}

const MOST_MORE = 6;
/** Chance with which the present estimate, if it is the true gain, has to come out clear. */
const ODDS = 0.8;

/**
 * Fewest more pulls of each in the set-ups they stand in with which the present estimate, if true, would come out clear with
 * 80 % odds. The look at the present pulls is counted: the next look shares the 5 % with it.
 *
 * @example pullsToSettle(comparison, 'B').morePulls // 2: "two more pulls of each would settle it"
 */
export function pullsToSettle(comparison: ScatterComparison, group: string): Settling {
  const gain = comparison.gains.find((one) => one.group === group);
  if (gain === undefined) throw new Error(`no gain of group ${group} in the comparison`);
  if (gain.verdict === 'clear') return { morePulls: 0, because: 'settled' };
  const pulls = pullsOf(comparison, gain);
  for (let more = 1; more <= MOST_MORE; more += 1) {
    if (oddsAfter(more, gain, comparison, pulls) >= ODDS) return { morePulls: more, because: 'pulls' };
  }
  const shared = gain.parts.setUp + gain.parts.day + gain.parts.cell + gain.parts.drift;
  return { morePulls: null, because: shared > gain.parts.pull ? 'set-up' : 'too small' };
}

/** Pulls on both sides, and the sum of their reciprocals, of which the pulls' own share of the variance is a multiple. */
interface Sides {
  changed: number;
  baseline: number;
}

function pullsOf({ counts, gains }: ScatterComparison, gain: GroupGain): Sides {
  const changed = counts.get(gain.group)!.pulls;
  const [baseline] = [...counts.keys()].filter((name) => gains.every(({ group }) => group !== name));
  return { changed, baseline: counts.get(baseline!)!.pulls };
}

function oddsAfter(
  more: number,
  gain: GroupGain,
  { spreads, gains }: ScatterComparison,
  { changed, baseline }: Sides,
): number {
  const now = 1 / changed + 1 / baseline;
  const then = 1 / (changed + more) + 1 / (baseline + more);
  const pullVariance = (gain.parts.pull * then) / now;
  const { setUp, day, cell, drift } = gain.parts;
  const made = changed + baseline;
  const all = made + 2 * more;
  const error = errorOfLook(lookAt(all, { at: [made, all] }), ERROR);
  // Equal numbers of pulls: the baseline they share makes half of each gain's variance.
  const family = { count: gains.length, sharedShare: gains.length === 1 ? 0 : 0.5 };
  const variance = (pulls: number) => pulls + setUp + day + cell + drift;
  const halfWidth = (pull: Pick<Spread, 'sigma' | 'degreesOfFreedom'>) => {
    const own = spreads.pull.sigma > 0 ? pullVariance * (pull.sigma / spreads.pull.sigma) ** 2 : 0;
    const degreesOfFreedom = equivalentDegreesOfFreedom([
      { variance: own, degreesOfFreedom: pull.degreesOfFreedom },
      { variance: setUp, degreesOfFreedom: spreads.setUp.degreesOfFreedom },
      { variance: day, degreesOfFreedom: spreads.day.degreesOfFreedom },
      { variance: cell, degreesOfFreedom: spreads.cell.degreesOfFreedom },
      // How well the drift is known is not kept with the comparison: no better than what is common to a set-up.
      { variance: drift, degreesOfFreedom: spreads.setUp.degreesOfFreedom },
    ]);
    return Math.sqrt(variance(own)) * criticalOfFamily(family, degreesOfFreedom, error);
  };
  return oddsToSee(gain.logGain, {
    standardError: Math.sqrt(variance(pullVariance)),
    bands: bandsToCome(spreads.pull, 2 * more, halfWidth),
  });
}
