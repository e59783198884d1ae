import {
  covarianceParts,
  criticalOfFamily,
  type Design,
  designOf,
  equivalentDegreesOfFreedom,
  errorOfLook,
  knownVariances,
  lookAt,
  type ScatterComparison,
  type ScatterHistory,
  type Spread,
  sourcesOf,
  sumOf,
  type VarianceParts,
  weightsOfGroups,
} from '../scatter/index.ts';
import { bandsToCome } from './bands-to-come.ts';
import type { DesignedPull } from './designed-pull.ts';
import type { Judged } from './odds-to-see.ts';

/** Error of all looks together, both sides: the 95 % band of a comparison. */
export const ERROR = 0.05;

/**
 * How well each gain over the baseline would be known from pulls that stand in this design, before they are made: the weights,
 * variances and critical values of a comparison of pulls, with every spread as history has it, the scatter that the repeats may
 * show of the pulls, and the degrees of freedom that returns would add to set-ups. Judged at the last look, with the share of the error that is left for it. `null`: nothing to compare.
 */
export function gainsOfDesign(
  pulls: readonly DesignedPull[],
  baseline: string,
  history: ScatterHistory,
  looksAt: readonly number[],
): Judged[] | null {
  const design = designOf(pulls.map(asArray));
  const { names } = design.groups;
  const base = names.indexOf(baseline);
  if (base < 0 || names.length < 2) return null;
  const spreads = expectedSpreads(design, history);
  const sources = sourcesOf(design, spreads, history.driftPerHour);
  const { ofGroup } = weightsOfGroups(design, spreads.pull.sigma, sources);
  const gains = names.flatMap((_, group) =>
    group === base ? [] : [ofGroup[group]!.map((weight, place) => weight - ofGroup[base]![place]!)],
  );
  const parts = gains.map((own) => covarianceParts(own, own, spreads.pull.sigma, sources));
  const covariance = (one: number, other: number) =>
    sumOf(covarianceParts(gains[one]!, gains[other]!, spreads.pull.sigma, sources));
  const variances = parts.map(sumOf);
  const family = { count: gains.length, sharedShare: smallestCorrelation(variances, covariance) };
  const error = errorOfLook(lookAt(pulls.length, { at: looksAt }), ERROR);
  const halfWidth = (own: VarianceParts, pull: Pick<Spread, 'sigma' | 'degreesOfFreedom'>) => {
    const ratio = history.pull.sigma > 0 ? (pull.sigma / history.pull.sigma) ** 2 : 1;
    const used = { ...own, pull: own.pull * ratio };
    const degreesOfFreedom = equivalentDegreesOfFreedom(knownVariances(used, pull, sources));
    return Math.sqrt(sumOf(used)) * criticalOfFamily(family, degreesOfFreedom, error);
  };
  return parts.map((own, gain) => ({
    standardError: Math.sqrt(variances[gain]!),
    bands: bandsToCome(history.pull, repeatsOf(design), (pull) => halfWidth(own, pull)),
  }));
}

/** Degrees of freedom of the scatter of pulls about their unit and the drift taken out. */
const repeatsOf = ({ groups, units, takenOut }: Design): number =>
  groups.of.length - units.names.length - takenOut.length;

/** A pull of a design as the comparison takes it; it has no curve yet. */
const asArray = ({ key, setUp, session, cell, hours }: DesignedPull) => ({
  engineSpeedRpm: [],
  power: [],
  group: key,
  setUp,
  session,
  cell,
  hours,
});

/** Spreads of the history with the degrees of freedom that the repeats of the design would bring to them. */
function expectedSpreads(design: Design, history: ScatterHistory): ScatterComparison['spreads'] {
  const more = (spread: Spread, degrees: number) => ({
    ...spread,
    degreesOfFreedom: spread.degreesOfFreedom + Math.max(0, degrees),
    fromRepeats: null,
    historySetAside: false,
  });
  return {
    pull: more(history.pull, 0),
    setUp: more(history.setUp, design.setUps.names.length - design.groups.names.length),
    day: more(history.day, 0),
    cell: more(history.cell, 0),
    within: { ...more(history.within, 0), lengthRpm: history.within.lengthRpm },
  };
}

/** Between two gains, at least 0; 0 for a single one. */
function smallestCorrelation(
  variances: readonly number[],
  covariance: (one: number, other: number) => number,
): number {
  if (variances.length < 2) return 0;
  let smallest = 1;
  for (let one = 1; one < variances.length; one += 1) {
    for (let other = 0; other < one; other += 1) {
      const scale = Math.sqrt(variances[one]! * variances[other]!);
      smallest = Math.min(smallest, scale > 0 ? covariance(one, other) / scale : 0);
    }
  }
  return Math.max(0, smallest);
}
