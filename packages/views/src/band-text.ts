import { displayUnit, formatNumber, fromInside } from '@pullbook/core/quantity';
import type { Showing } from './showing.ts';

type Range = readonly [low: number, high: number];

/** More decimals than these would claim what no brake can show. */
const MOST_DECIMALS = 3;
/** Of the last digit shown: a figure that lies on it but for the computer's rounding is that figure. */
const ON_THE_DIGIT = 1e-6;

/**
 * Decimals with which a gain and its band in W say what they are: none, but more where a gain that is claimed would read as
 * nothing or a band that leaves out zero would seem to hold it.
 */
export function gainDecimals(
  show: Showing,
  gain: number,
  band: Range,
  isClaimed: boolean = leavesOutZero(band),
): number {
  for (let decimals = 0; decimals < MOST_DECIMALS; decimals += 1) {
    const reads = Math.round(shown(show, gain) * 10 ** decimals) !== 0;
    const agrees = !leavesOutZero(band) || leavesOutZero(outward(show, band, decimals));
    if ((reads || !isClaimed) && agrees) return decimals;
  }
  return MOST_DECIMALS;
}

/** `11 to 19`, `−5 to +9`: a band of power, rounded outward, without its unit. `size`: of a loss, its size. */
export function bandText(
  show: Showing,
  band: Range,
  { decimals = 0, size = false }: { decimals?: number; size?: boolean } = {},
): string {
  const [low, high] = outward(show, band, decimals);
  const both = low < 0 && high > 0;
  const text = (value: number) =>
    formatNumber(value, decimals, show.options.decimalMark, { thousands: true, sign: both });
  return size && high <= 0 ? `${text(-high)} to ${text(-low)}` : `${text(low)} to ${text(high)}`;
}

/** `26 hp`: how far a band reaches, rounded up, without its sign. */
export function reachText(show: Showing, watt: number): string {
  const whole = Math.ceil(Math.abs(shown(show, watt)) - ON_THE_DIGIT);
  return `${formatNumber(whole, 0, show.options.decimalMark, { thousands: true })}\u00a0${show.unit('power')}`;
}

/** `0.9 %`: rounded up, with as many decimals as keep it within the limit it was held against. */
export function atMostPerCent(show: Showing, ratio: number, limit: number): string {
  const up = (decimals: number) =>
    Math.ceil(ratio * 10 ** (decimals + 2) - ON_THE_DIGIT) / 10 ** (decimals + 2);
  const decimals = [1, 2, 3].find((one) => up(one) <= limit || ratio > limit) ?? MOST_DECIMALS;
  return show.perCent(up(decimals), { decimals });
}

/** `+1.2 to +3.4 %` of shares, rounded outward. */
export function bandPerCent(show: Showing, [low, high]: Range, decimals = 1): string {
  const steps = 10 ** (decimals + 2);
  const ends = [
    Math.floor(low * steps + ON_THE_DIGIT) / steps,
    Math.ceil(high * steps - ON_THE_DIGIT) / steps,
  ];
  const text = (value: number) =>
    formatNumber(100 * value, decimals, show.options.decimalMark, { sign: true });
  return `${text(ends[0]!)} to ${text(ends[1]!)}\u00a0%`;
}

export const leavesOutZero = ([low, high]: Range): boolean => low > 0 || high < 0;

const shown = ({ options }: Showing, watt: number): number =>
  fromInside(watt, displayUnit('power', options.units));

function outward(show: Showing, [low, high]: Range, decimals: number): Range {
  const steps = 10 ** decimals;
  return [
    Math.floor(shown(show, low) * steps + ON_THE_DIGIT) / steps,
    Math.ceil(shown(show, high) * steps - ON_THE_DIGIT) / steps,
  ];
}
