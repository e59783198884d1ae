import type { Pull } from '@pullbook/core/pull';
import { percentFigure } from '@pullbook/core/quantity';
import { joined, type Remark, remark, said } from '@pullbook/core/remark';
import type { ScatterHistory, Spread } from '@pullbook/core/scatter';

/** Scatter that a person says for one comparison, in place of what the book knows. Shares of power. */
export interface StatedScatter {
  /** Between pulls of one set-up. Said, it replaces all that is known: what else is not said is none. */
  pull?: number | undefined;
  /** Of taking apart and putting together. */
  setUp?: number | undefined;
  /** Of the slope in time within a day, an hour. */
  driftPerHour?: number | undefined;
  /** How well all of it is known; missing: `STATED_DEGREES_OF_FREEDOM`. */
  degreesOfFreedom?: number | undefined;
}

/** A person's figure is seldom better known than from some twenty repeats. Common practice, no source. */
export const STATED_DEGREES_OF_FREEDOM = 20;

/**
 * History with what a person said of the scatter put in. The scatter along the engine speed stays as known: nobody says it.
 *
 * @example withStated(history, { pull: 0.005 }).setUp.sigma // 0
 */
export function withStated(history: ScatterHistory, stated: StatedScatter): ScatterHistory {
  const degreesOfFreedom = stated.degreesOfFreedom ?? STATED_DEGREES_OF_FREEDOM;
  const spread = (sigma: number): Spread => ({ sigma, degreesOfFreedom, from: 'stated' });
  const others = stated.pull === undefined ? {} : { day: spread(0), cell: spread(0) };
  const of = (said: number | undefined, known: Spread): Spread => {
    if (said !== undefined) return spread(said);
    return stated.pull === undefined ? known : spread(0);
  };
  return {
    ...history,
    ...others,
    pull: of(stated.pull, history.pull),
    setUp: of(stated.setUp, history.setUp),
    driftPerHour: of(stated.driftPerHour, history.driftPerHour),
  };
}

/** What the pulls are known to differ in and the scatter said by hand leaves out of the band. */
export function leftOutOfBand(
  history: ScatterHistory,
  pulls: readonly Pull[],
  takenApart: boolean,
): Remark[] {
  const several = (values: (string | null)[]) => new Set(values.filter((one) => one !== null)).size > 1;
  const missing = [
    history.setUp.sigma === 0 &&
      (takenApart || several(pulls.map(({ setUpId }) => setUpId))) &&
      'taking apart and putting together again',
    history.day.sigma === 0 &&
      several(pulls.map(({ recordedAt }) => recordedAt?.slice(0, 10) ?? null)) &&
      'different days',
    history.cell.sigma === 0 && several(pulls.map(({ cell }) => cell)) && 'different cells',
  ].filter((one) => one !== false);
  if (history.pull.from !== 'stated' || missing.length === 0) return [];
  return [
    remark(
      'caution',
      'left-out-of-stated-scatter',
      said`The scatter was said by hand: ${percentFigure(history.pull.sigma, 2)} between pulls. These pulls also differ by ${joined(missing, ', ')}; nothing of that is in the band, so it may be too narrow. Say the set-up scatter too, or leave the scatter to the book.`,
    ),
  ];
}
