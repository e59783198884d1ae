import { clearRanges } from './clear-ranges.ts';
import { criticalOfFamily, type Family } from './critical-value.ts';
import { crossoversWithStretch } from './crossovers.ts';
import { curveBand } from './curve-band.ts';
import type { Design } from './design-of-pulls.ts';
import { equivalentDegreesOfFreedom } from './equivalent-degrees-of-freedom.ts';
import { errorOfLook, lookAt, lookTold } from './look-of-plan.ts';
import type { GroupGain, ScatterComparison, ScatterOptions } from './model.ts';
import { dot } from './orthonormal-columns.ts';
import { covarianceParts, knownVariances, type Source, sumOf } from './variance-sources.ts';
import { type Bands, verdictWord } from './verdict-word.ts';
import type { Weights } from './weights-of-groups.ts';
import type { ArraysOnNodes } from './window-of-arrays.ts';

/** Smallest gain that matters where nobody said: below it a brake hardly sees one (from memory of the trade). */
export const WORTHWHILE_GAIN = 0.01;

export interface GainsInput {
  design: Design;
  on: ArraysOnNodes;
  spreads: ScatterComparison['spreads'];
  sources: readonly Source[];
  weights: Weights;
  options: ScatterOptions;
}

/** Each group against the baseline, in the order in which the groups come. None without a baseline. */
export function gainsOfGroups(input: GainsInput): GroupGain[] {
  const { design, weights, options, spreads, sources } = input;
  const baseline = design.groups.names.indexOf(options.baseline);
  if (baseline < 0) return [];
  const changed = design.groups.names.flatMap((group, level) =>
    level === baseline
      ? []
      : [
          {
            group,
            weights: weights.ofGroup[level]!.map(
              (weight, pull) => weight - weights.ofGroup[baseline]![pull]!,
            ),
          },
        ],
  );
  const family: Family = {
    count: changed.length,
    sharedShare: smallestCorrelation(
      changed.map((gain) => gain.weights),
      (one, other) => sumOf(covarianceParts(one, other, spreads.pull.sigma, sources)),
    ),
  };
  return changed.map((gain) => gainOfGroup(input, gain.group, gain.weights, family));
}

function gainOfGroup(
  { design, on, spreads, sources, options }: GainsInput,
  group: string,
  weights: Float64Array,
  family: Family,
): GroupGain {
  const parts = covarianceParts(weights, weights, spreads.pull.sigma, sources);
  const variances = knownVariances(parts, spreads.pull, sources);
  const logGain = dot(weights, on.logMean);
  const standardError = Math.sqrt(sumOf(parts));
  const degreesOfFreedom = equivalentDegreesOfFreedom(variances);
  const look = lookAt(design.groups.of.length, options.looks);
  const error = errorOfLook(look, 0.05);
  const critical = criticalOfFamily(family, degreesOfFreedom, error);
  const half = (alpha: number) =>
    standardError * criticalOfFamily(family, degreesOfFreedom, errorOfLook(look, alpha));
  const [half95, half80, half90] = [standardError * critical, half(0.2), half(0.1)];
  const bands: Bands = {
    low: Math.expm1(logGain - half95),
    high: Math.expm1(logGain + half95),
    likelyLow: Math.expm1(logGain - half80),
    likelyHigh: Math.expm1(logGain + half80),
    noDifferenceLargerThan: Math.max(
      Math.abs(Math.expm1(logGain - half90)),
      Math.abs(Math.expm1(logGain + half90)),
    ),
  };
  const curve = curveBand({ on, weights, gain: variances, within: spreads.within, family, error });
  const ends = (halves: Float64Array, sign: 1 | -1) =>
    curve.logGain.map((value, node) => value + sign * halves[node]!);
  const speeds = on.engineSpeedRpm;
  return {
    group,
    ratio: Math.expm1(logGain),
    logGain,
    standardError,
    degreesOfFreedom,
    critical,
    ...bands,
    verdict: verdictWord(bands, options.worthwhile ?? WORTHWHILE_GAIN),
    parts,
    weights,
    curve,
    clearRanges: clearRanges(speeds, ends(curve.simultaneous, -1), ends(curve.simultaneous, 1)),
    crossovers: crossoversWithStretch(
      speeds,
      curve.logGain,
      ends(curve.pointwise, -1),
      ends(curve.pointwise, 1),
    ),
    look: lookTold(look, 0.05),
  };
}

/** Never below 0: the largest |t| of gains that move against one another is not larger than of independent ones by much. */
function smallestCorrelation(
  gains: readonly Float64Array[],
  covariance: (one: Float64Array, other: Float64Array) => number,
): number {
  const deviations = gains.map((gain) => Math.sqrt(covariance(gain, gain)));
  let smallest = 1;
  for (const [one, gain] of gains.entries())
    for (let other = 0; other < one; other++) {
      const product = deviations[one]! * deviations[other]!;
      smallest = Math.min(smallest, product > 0 ? covariance(gain, gains[other]!) / product : 0);
    }
  return Math.max(0, smallest);
}
