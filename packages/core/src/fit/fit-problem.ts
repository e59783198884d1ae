import { choleskyOf, solveWith } from '../numeric/index.ts';
import type { BendAxis, FitParameterId, FitTarget, FittedMoves } from './model.ts';
import { MOVES } from './moves.ts';
import { OWN_MOVES, type OwnMoveId } from './own-moves.ts';
import { PARAMETERS } from './parameters.ts';
import { movesOf, placeOfOwn } from './places-of-moves.ts';
import { type ChannelReadings, covarianceOf } from './readings-on-nodes.ts';
import { dot, inverseOf } from './whitened.ts';
import { whitenedResiduals, whitenedSlopes } from './whitened-readings.ts';

export interface FitProblem {
  targets: readonly FitTarget[];
  /** Combination of each target, from 0. */
  combinationOf: readonly number[];
  channels: readonly ChannelReadings[];
  /** Of what all share, in the order of `MOVES`. */
  prior: readonly number[][];
  /** Deviations of each combination's own. */
  own: readonly Record<OwnMoveId, number>[];
  axis: BendAxis;
  /** They stay where they are but are no more certain for that: they are in what is open. */
  held: readonly FitParameterId[];
}

export interface FoundMoves {
  /** By combination. */
  combinations: FittedMoves[];
  /** What all share: for a combination that was not fitted. */
  shared: FittedMoves;
  /** Names of the channels that speak of each. */
  from: Record<FitParameterId, string[]>;
  isSettled: boolean;
}

/** Share of a prior's information that a channel must bring to speak of a parameter. */
const SPEAKS_FROM = 0.2;
/** Share of its prior's deviation below which a step settles the search. */
const SETTLED = 1e-3;
const MOST_SLOPES = 8;
/** Steps with the slopes of one place: slopes cost many matches, a step one for each pull, and a match is nearly straight. */
const STEPS_WITH_ONE_SLOPE = 4;
const MOST_HALVINGS = 6;

/**
 * The moves that readings and prior ask for together (maximum a posteriori), by Gauss-Newton steps, halved until they help. On a combination's
 * pulls acts what all share and its own.
 */
export function findMoves(problem: FitProblem): FoundMoves {
  const { prior, own, channels, held } = problem;
  const deviations = [
    ...prior.map((line, place) => Math.sqrt(line[place]!)),
    ...own.flatMap((one) => OWN_MOVES.map((id) => one[id])),
  ];
  const precision = precisionOf(prior, deviations);
  const isHeld = deviations.map((_, place) => held.some((id) => id === MOVES[place]));
  const triangles = channels.map((one) => choleskyOf(covarianceOf(one)));
  const look = (at: readonly number[]) => {
    const off = whitenedResiduals(problem, triangles, at);
    const ofPrior = precision.map((line) => dot(line, at));
    return { at, off, ofPrior, squares: dot(off, off) + dot(ofPrior, at) };
  };

  let now = look(deviations.map(() => 0));
  let slopes: Float64Array[] = [];
  let isSettled = false;
  for (let place = 0; place < MOST_SLOPES && !isSettled; place++) {
    slopes = whitenedSlopes(problem, triangles, now.at, deviations);
    const triangle = choleskyOf(withHeld(informationOf(slopes, precision), isHeld));
    for (let step = 0; step < STEPS_WITH_ONE_SLOPE && !isSettled; step++) {
      const downhill = slopes.map((slope, i) => (isHeld[i] ? 0 : -dot(slope, now.off) - now.ofPrior[i]!));
      const by = solveWith(triangle, downhill);
      isSettled = by.every((value, i) => Math.abs(value) < SETTLED * deviations[i]!);
      const before = now;
      for (let halving = 0; halving < MOST_HALVINGS && now === before; halving++) {
        const next = look(now.at.map((value, i) => value + by[i]! / 2 ** halving));
        if (next.squares <= now.squares) now = next;
      }
      if (now === before) break;
    }
  }
  const open = choleskyOf(inverseOf(informationOf(slopes, precision)));
  const found = (combination: number | null): FittedMoves => ({
    by: movesOf(now.at, combination),
    lines: MOVES.map((id, place) => {
      const own = combination === null ? null : placeOfOwn(combination, id);
      return own === null ? open[place]! : open[own]!.map((value, i) => value + open[place]![i]!);
    }),
  });
  return {
    combinations: own.map((_, combination) => found(combination)),
    shared: found(null),
    from: Object.fromEntries(
      PARAMETERS.map((id, place) => [id, speaking(slopes[place]!, channels, prior[place]![place]!)]),
    ) as FoundMoves['from'],
    isSettled,
  };
}

function precisionOf(prior: readonly number[][], deviations: readonly number[]): number[][] {
  const ofShared = inverseOf(prior);
  return deviations.map((deviation, i) =>
    deviations.map((_, j) => (i === j && i >= prior.length ? 1 / deviation ** 2 : (ofShared[i]?.[j] ?? 0))),
  );
}

const informationOf = (slopes: readonly Float64Array[], precision: readonly number[][]): number[][] =>
  slopes.map((one, i) => slopes.map((other, j) => dot(one, other) + precision[i]![j]!));

const withHeld = (information: readonly number[][], isHeld: readonly boolean[]): number[][] =>
  information.map((line, i) =>
    line.map((value, j) => {
      if (!isHeld[i] && !isHeld[j]) return value;
      return i === j ? 1 : 0;
    }),
  );

function speaking(
  slope: Float64Array,
  channels: readonly ChannelReadings[],
  priorVariance: number,
): string[] {
  let from = 0;
  return channels.flatMap(({ channel, readings }) => {
    let own = 0;
    for (let row = from; row < from + readings.length; row++) own += slope[row]! ** 2;
    from += readings.length;
    return own * priorVariance > SPEAKS_FROM ? [channel.name] : [];
  });
}
