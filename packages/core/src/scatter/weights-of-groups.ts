import { choleskyOf, solveWith } from '../numeric/index.ts';
import { columnsOf, type Design } from './design-of-pulls.ts';
import { dot } from './orthonormal-columns.ts';
import type { Source } from './variance-sources.ts';

export interface Weights {
  /** Weight of each pull in the mean of each group, by group. */
  ofGroup: Float64Array[];
  /** Weight of each pull in the slope of each session whose drift is taken out. */
  ofSlope: Float64Array[];
}

/** Smallest scatter of pulls the weights reckon with: shares far below any brake, so that a stated 0 still has weights. */
const LEAST_SCATTER = 1e-6;
/** The same against the largest other spread. */
const LEAST_SHARE = 1e-4;
/** Weights this near to one over the number of pulls are it: they differ by rounding. */
const ROUNDING = 1e-9;

/**
 * Generalised least squares: (X' V⁻¹ X)⁻¹ X' V⁻¹ with the groups and the drifts taken out in X, and the set-ups, days and cells
 * that pulls share in V. A drift that is carried does not weigh: it would shift every gain of blocks by what is only expected
 * of the cell, for little; it widens the band instead. Balanced pulls weigh exactly 1 / n.
 */
export function weightsOfGroups(design: Design, pull: number, sources: readonly Source[]): Weights {
  const lasting = sources.filter(({ part }) => part !== 'drift');
  const covariance = choleskyOf(covarianceOf(design.groups.of.length, pull, lasting));
  const columns = [...columnsOf(design.groups), ...design.takenOut];
  const weighted = columns.map((column) => Float64Array.from(solveWith(covariance, column)));
  const information = choleskyOf(
    columns.map((one) => Float64Array.from(weighted, (other) => dot(one, other))),
  );
  const rows = columns.map((_, wanted) => {
    const mix = solveWith(
      information,
      Float64Array.from(columns, (__, column) => (column === wanted ? 1 : 0)),
    );
    return mixed(weighted, mix);
  });
  const groups = design.groups.names.length;
  return {
    ofGroup: rows.slice(0, groups).map((row, group) => plainWhere(row, columns[group]!)),
    ofSlope: rows.slice(groups),
  };
}

function covarianceOf(pulls: number, pull: number, sources: readonly Source[]): Float64Array[] {
  const largest = Math.max(0, ...sources.map(({ sigma }) => sigma));
  const own = Math.max(pull, LEAST_SCATTER, LEAST_SHARE * largest) ** 2;
  const matrix = Array.from({ length: pulls }, (_, row) => {
    const line = new Float64Array(pulls);
    line[row] = own;
    return line;
  });
  for (const { columns, sigma } of sources)
    for (const column of columns)
      for (let row = 0; row < pulls; row++) {
        if (column[row] === 0) continue;
        for (let other = 0; other < pulls; other++)
          matrix[row]![other]! += sigma ** 2 * column[row]! * column[other]!;
      }
  return matrix;
}

function mixed(weighted: readonly Float64Array[], mix: ArrayLike<number>): Float64Array {
  return Float64Array.from(weighted[0]!, (_, pull) =>
    weighted.reduce((sum, column, place) => sum + mix[place]! * column[pull]!, 0),
  );
}

/** Equal weights where the row has them but for rounding. */
function plainWhere(row: Float64Array, indicator: Float64Array): Float64Array {
  const count = indicator.reduce((sum, value) => sum + value, 0);
  const plain = indicator.map((value) => value / count);
  return row.every((weight, pull) => Math.abs(weight - plain[pull]!) < ROUNDING) ? plain : row;
}
