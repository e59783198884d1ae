import { columnsOf, type Design } from './design-of-pulls.ts';
import type { KnownVariance } from './equivalent-degrees-of-freedom.ts';
import type { ScatterComparison, Spread, VarianceParts } from './model.ts';
import { dot } from './orthonormal-columns.ts';

/** One source of variance: columns that each move together by one unknown offset. */
export interface Source {
  part: keyof VarianceParts;
  columns: Float64Array[];
  sigma: number;
  degreesOfFreedom: number;
}

/** Where offsets come from in this comparison, beside each pull's own. */
export function sourcesOf(design: Design, spreads: ScatterComparison['spreads'], drift: Spread): Source[] {
  const from = (
    part: Source['part'],
    columns: Float64Array[],
    spread: Pick<Spread, 'sigma' | 'degreesOfFreedom'>,
  ) => ({
    part,
    columns,
    sigma: spread.sigma,
    degreesOfFreedom: spread.degreesOfFreedom,
  });
  return [
    from('setUp', columnsOf(design.setUps), spreads.setUp),
    from('day', columnsOf(design.sessions), spreads.day),
    from('cell', columnsOf(design.cells), spreads.cell),
    from('drift', design.carried, drift),
  ];
}

/** Covariance of two weighted sums of the pulls, by source. */
export function covarianceParts(
  one: Float64Array,
  other: Float64Array,
  pull: number,
  sources: readonly Source[],
): VarianceParts {
  const parts: VarianceParts = { pull: pull ** 2 * dot(one, other), setUp: 0, day: 0, cell: 0, drift: 0 };
  for (const { part, columns, sigma } of sources)
    for (const column of columns) parts[part] += sigma ** 2 * dot(one, column) * dot(other, column);
  return parts;
}

export const sumOf = ({ pull, setUp, day, cell, drift }: VarianceParts): number =>
  pull + setUp + day + cell + drift;

/** The parts with how well each is known. */
export function knownVariances(
  parts: VarianceParts,
  pull: Pick<Spread, 'degreesOfFreedom'>,
  sources: readonly Source[],
): KnownVariance[] {
  return [
    { variance: parts.pull, degreesOfFreedom: pull.degreesOfFreedom },
    ...sources.map(({ part, degreesOfFreedom }) => ({ variance: parts[part], degreesOfFreedom })),
  ];
}
