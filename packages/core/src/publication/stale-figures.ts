import { decimalsFor, displayUnit, formatNumber, fromInside } from '../quantity/index.ts';
import type { Publication, PublishedFigure, SaidFigure, StaleFigure } from './model.ts';

/**
 * Which figures of a publication are no longer what its trial gives: `now` are the trial's figures of today, worked out by the
 * publication's own standard; `null`: the trial is no longer there.
 *
 * A figure is stale when it would be written otherwise than it was: in the units in which it was said, with the decimals of its
 * kind (0.1 hp; a share as per cent with two), at another ten of engine speed. What is written alike needs no mending where it
 * appeared. The band does not count: it says how sure one was on that day, and what a shop knows of its scatter grows with
 * every pull.
 *
 * @example staleFigures(publication, figuresOf(answer))
 */
export function staleFigures(
  { figures }: Pick<Publication, 'figures'>,
  now: readonly PublishedFigure[] | null,
): StaleFigure[] {
  return figures.flatMap((said) => {
    const today = now?.find(({ id, key }) => id === said.id && key === said.key) ?? null;
    const isSame = today !== null && writtenIn(said, said.units) === writtenIn(today, said.units);
    return isSame ? [] : [{ said, now: today }];
  });
}

/** Decimals of a share as per cent, as errata and tables have it. */
const DECIMALS_OF_PER_CENT = 2;

/** Number and place as they are read; decimal mark and groups are alike for both that are held against each other. */
function writtenIn({ kind, value, engineSpeedRpm }: PublishedFigure, units: SaidFigure['units']): string {
  const number =
    kind === 'ratio'
      ? formatNumber(100 * value, DECIMALS_OF_PER_CENT, '.')
      : formatNumber(fromInside(value, displayUnit(kind, units)), decimalsFor(kind, units), '.');
  return engineSpeedRpm === null ? number : `${number} at ${Math.round(engineSpeedRpm / 10)}`;
}
