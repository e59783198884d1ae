import type { VerdictWord } from './model.ts';

/** Bands of one gain: the first four as shares, or all in one unit, since only their signs count. */
export interface Bands {
  low: number;
  high: number;
  likelyLow: number;
  likelyHigh: number;
  /** The larger end of the 90 % band, share. */
  noDifferenceLargerThan: number;
}

/**
 * The verdict by its bands: `clear` where the 95 % band excludes zero, `likely` where the 80 % band does, `no-difference` where
 * the 90 % band lies inside the worthwhile gain (two one-sided tests at 5 %), else `within-noise`.
 *
 * @example a 95 % band of -0.2 to 1.8 % and an 80 % one of 0.2 to 1.4 % is `likely`
 */
export function verdictWord(bands: Bands, worthwhile: number): VerdictWord {
  if (excludesZero(bands.low, bands.high)) return 'clear';
  if (excludesZero(bands.likelyLow, bands.likelyHigh)) return 'likely';
  return bands.noDifferenceLargerThan < worthwhile ? 'no-difference' : 'within-noise';
}

const excludesZero = (low: number, high: number): boolean => low > 0 || high < 0;
