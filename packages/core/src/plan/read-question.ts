import { accepted, type Result, refused, remark } from '../remark/index.ts';

const GAINS = [0.001, 0.5] as const;
const ODDS = [0.5, 0.99] as const;

/** A gain to be seen, as a share; refused outside what a brake can show and a change can do. */
export function readGain(ratio: number): Result<number> {
  if (ratio >= GAINS[0] && ratio <= GAINS[1]) return accepted(ratio);
  return refused(
    remark(
      'refusal',
      'gain-to-see',
      `A gain of ${percent(ratio)} cannot be planned for. Give one from 0.1 % to 50 % of the baseline's power, such as 2 %.`,
    ),
  );
}

/** Odds of seeing it; refused where they are a coin's or cannot be promised. */
export function readOdds(odds: number): Result<number> {
  if (odds >= ODDS[0] && odds <= ODDS[1]) return accepted(odds);
  return refused(
    remark(
      'refusal',
      'odds-to-see',
      `Odds of ${Number.isFinite(odds) ? odds : 'nothing'} cannot be planned for. Give a number from 0.5 to 0.99, such as 0.8.`,
    ),
  );
}

const percent = (ratio: number): string =>
  Number.isFinite(ratio) ? `${Number((100 * ratio).toPrecision(4))} %` : 'nothing';
