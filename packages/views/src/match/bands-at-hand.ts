import type { MatchBands, MatchCase } from '@pullbook/core/airpath';
import type { PageBands } from '../match-model.ts';

/** Bands that came, with the cases they were asked for. */
export interface BandsThatCame {
  cases: readonly MatchCase[];
  bands: MatchBands;
}

/**
 * What is still true of bands that came, for the cases that a page shows now: a case that nothing was changed of keeps its band,
 * and its difference where the first case is the same too. What is tried anew has none until its own come. `null`: none came yet.
 *
 * @example bandsAtHand({ cases: [a], bands }, [a, tried])?.cases // [band of a, null]
 */
export function bandsAtHand(came: BandsThatCame | null, cases: readonly MatchCase[]): PageBands | null {
  if (came === null) return null;
  const placeOf = (one: MatchCase) =>
    came.cases.findIndex(({ input, spread }) => input === one.input && spread === one.spread);
  const places = cases.map(placeOf);
  const hasSameFirst = places[0] === 0;
  return {
    cases: places.map((place) => came.bands.cases[place] ?? null),
    differences: places.map((place) => (hasSameFirst ? (came.bands.differences[place] ?? null) : null)),
  };
}
