import type { InductionClass, ScatterPrior } from './model.ts';

/**
 * Scatter a shop is taken to have before its own pulls say better. Shares of power, one standard deviation. Two set-ups on
 * two days differ by 1 % together: what the day adds is what a set-up leaves of it.
 *
 * @example BUILT_IN_PRIOR.pull.supercharged // 0.01: pulls of one set-up, 1 %
 */
export const BUILT_IN_PRIOR: ScatterPrior = Object.freeze({
  pull: { injected: 0.004, carburetted: 0.006, supercharged: 0.01 },
  setUp: 0.005,
  day: Math.sqrt(0.01 ** 2 - 0.005 ** 2),
  cell: 0.03,
  within: 0.003,
  withinLengthRpm: 250,
  driftPerHour: 0.001,
  degreesOfFreedom: { pull: 6, setUp: 4, day: 4, cell: 4, within: 8, drift: 4 },
});

/** Figures of a prior that a person can set, each by the path under which it is written. */
export type PriorFigure =
  | `pull.${InductionClass}`
  | 'setUp'
  | 'day'
  | 'cell'
  | 'within'
  | 'withinLengthRpm'
  | 'driftPerHour';

/** What each built-in figure rests on, in words for the page. */
export const PRIOR_PROVENANCE: Readonly<Record<PriorFigure, string>> = Object.freeze({
  'pull.injected':
    'careful engine brake, same day: 0.3 to 0.5 %, on a good day 0.2 %; common practice, no source',
  'pull.carburetted': 'carburettor, or ordinary care: 0.5 to 1.0 %; from memory',
  'pull.supercharged':
    'supercharged, heat soaking, belt drive: 0.7 to 1.5 %, often falling from pull to pull; from memory',
  setUp: 'taken apart and put together again, the same day: about 0.5 %; from memory',
  day: 'another day, corrected, with a new set-up: about 1 % together, of which the set-up is 0.5 %; from memory',
  cell: 'another cell, same make of brake: 2 to 3 %; from memory',
  within: 'one engine speed after means over 50 rpm, against the pull’s own average; assumed',
  withinLengthRpm: 'how far along the curve what one pull reads high stays alike; assumed',
  driftPerHour:
    '1 % over a day is flagged, taken as one standard deviation of ten hours; common practice, no source',
});
