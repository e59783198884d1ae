import { solveMatch } from '../airpath/index.ts';
import type { FitProblem } from './fit-problem.ts';
import { MOVES, movedBy } from './moves.ts';
import { movesOf, placeOfOwn } from './places-of-moves.ts';
import { type ChannelReadings, figureAt } from './readings-on-nodes.ts';
import { whitenedRows } from './whitened.ts';

/** Share of its prior's deviation by which a move is made to feel the slope. */
const STEP = 0.1;

const OF_SWALLOWING = MOVES.indexOf('swallowingScale');

/** Measured less matched of the readings at these moves, of spread 1 each and independent. */
export function whitenedResiduals(
  { targets, combinationOf, channels, axis }: FitProblem,
  triangles: readonly number[][][],
  at: readonly number[],
): Float64Array {
  const curves = targets.map(({ input }, target) =>
    solveMatch(movedBy(input, movesOf(at, combinationOf[target]!), axis)),
  );
  const scale = 1 + at[OF_SWALLOWING]!;
  return whitenedRows(channels, triangles, ({ channel }, { target, speedRpm, value }) => {
    const bias = scale ** (channel.followsSwallowing ?? 0);
    return value - bias * figureAt(curves[target]!, channel, speedRpm);
  });
}

/**
 * Slopes of these residuals, a row for each place of `at`. Pulls of one combination differ by their air alone, so that those of its first serve
 * all.
 */
export function whitenedSlopes(
  { targets, combinationOf, channels, axis }: FitProblem,
  triangles: readonly number[][][],
  at: readonly number[],
  deviations: readonly number[],
): Float64Array[] {
  const scale = 1 + at[OF_SWALLOWING]!;
  const firsts = targets.flatMap(({ input }, target) =>
    combinationOf.indexOf(combinationOf[target]!) === target ? [input] : [],
  );
  const rows = new Array<Float64Array>(deviations.length);
  MOVES.forEach((id, place) => {
    const step = STEP * deviations[place]!;
    const moved = firsts.map((input, combination) => {
      const to = (by: number) => {
        const moves = movesOf(at, combination);
        return solveMatch(movedBy(input, { ...moves, [id]: moves[id] + by }, axis));
      };
      return { above: to(step), below: to(-step) };
    });
    const slopeAt = ({ channel }: ChannelReadings, target: number, speedRpm: number): number => {
      const { above, below } = moved[combinationOf[target]!]!;
      const rise = figureAt(above, channel, speedRpm) - figureAt(below, channel, speedRpm);
      const slope = (scale ** (channel.followsSwallowing ?? 0) * rise) / (2 * step);
      return Number.isFinite(slope) ? -slope : 0;
    };
    rows[place] = whitenedRows(channels, triangles, (one, { target, speedRpm, value }) => {
      // The meter's bias moves all of a reading, whatever else is moved.
      const follows = place === OF_SWALLOWING ? (one.channel.followsSwallowing ?? 0) : 0;
      return slopeAt(one, target, speedRpm) - (follows * value) / scale;
    });
    for (let combination = 0; combination < firsts.length; combination++) {
      const own = placeOfOwn(combination, id);
      if (own !== null)
        rows[own] = whitenedRows(channels, triangles, (one, { target, speedRpm }) =>
          combinationOf[target] === combination ? slopeAt(one, target, speedRpm) : 0,
        );
    }
  });
  return rows;
}
