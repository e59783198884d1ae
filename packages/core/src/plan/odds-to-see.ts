import { normalCdf, rootInBracket } from '../numeric/index.ts';

/** How a gain will be judged: how far its estimate scatters, and how wide its 95 % band may come out. */
export interface Judged {
  /** Of the logarithm of the gain, with every spread as history has it. */
  standardError: number;
  /** Half-widths of the band on the logarithm, by what the repeats may show, with their chances, which add to 1. */
  bands: { chance: number; halfWidth: number }[];
}

/**
 * Chance that a gain of this size comes out clear, where the spreads are what history says: that its estimate, which is normal
 * and independent of the scatter of repeats, lies farther from zero than the half-width that those repeats lead to.
 *
 * @example oddsToSee(Math.log(1.02), { standardError: 0.005, bands: [{ chance: 1, halfWidth: 0.0098 }] }) // 0.98
 */
export function oddsToSee(logGain: number, { standardError, bands }: Judged): number {
  if (standardError === 0) return logGain === 0 ? 0 : 1;
  const gain = Math.abs(logGain);
  return bands.reduce(
    (sum, { chance, halfWidth }) =>
      sum +
      chance *
        (normalCdf((gain - halfWidth) / standardError) + normalCdf((-gain - halfWidth) / standardError)),
    0,
  );
}

/** Beyond this many standard errors nothing is planned: spreads known so badly can show nothing. */
const MOST_ERRORS = 500;

/**
 * Smallest gain, as a share of the baseline, that comes out clear with these odds; Infinity where spreads are known so badly
 * that none does.
 */
export function smallestDifference(odds: number, judged: Judged): number {
  const { standardError, bands } = judged;
  if (standardError === 0) return 0;
  const widest = Math.max(...bands.map(({ halfWidth }) => halfWidth));
  const gain = rootInBracket((at) => oddsToSee(at, judged) - odds, {
    low: 0,
    high: Math.min(MOST_ERRORS * standardError, widest + 10 * standardError),
  });
  return Number.isNaN(gain) ? Number.POSITIVE_INFINITY : Math.expm1(gain);
}
