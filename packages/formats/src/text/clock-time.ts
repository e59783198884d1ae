const CLOCK =
  /^(?:(\d{4}-\d{2}-\d{2}|\d{1,2}[./-]\d{1,2}[./-]\d{2,4})[ T])?(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,:](\d{1,9}))?)?\s*([ap])?\.?m?\.?(?:Z|[+-]\d{2}:?\d{2})?$/i;
const MINUTES = /^(\d{1,3}):(\d{2})[.,](\d{1,9})$/;

/**
 * Seconds since midnight of a clock time such as `14:22:01.250`, `2:22:01 pm` or `2024-05-03T14:22:01`; minutes and
 * seconds with a fraction (`02:31.5`) count from 0. `null`: not a clock time. A date before it is not looked at.
 */
export function secondsFromClock(text: string): number | null {
  const trimmed = text.trim();
  if (trimmed.indexOf(':') < 0) return null;
  const short = MINUTES.exec(trimmed);
  if (short) return Number(short[1]) * 60 + Number(`${short[2]}.${short[3]}`);
  const match = CLOCK.exec(trimmed);
  if (!match) return null;
  const [, , hourText, minute, second = '0', fraction = '0', half] = match;
  let hour = Number(hourText);
  if (half) hour = (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  if (hour > 23 || Number(minute) > 59 || Number(second) > 60) return null;
  return hour * 3600 + Number(minute) * 60 + Number(`${second}.${fraction}`);
}

const HALF_DAY = 43_200;
/** The longest that a row may last at the turn of a 12-hour clock. */
const TURN = 1800;

/**
 * Turns clock readings into seconds from the first one, in place. A step back of over 12 hours is midnight passing, one of
 * nearly 12 hours the turn from 12:59 to 1:00 on a clock that does not say am or pm.
 */
export function secondsFromFirst(seconds: Float64Array): void {
  let first = Number.NaN;
  let before = Number.NaN;
  let turns = 0;
  for (let row = 0; row < seconds.length; row++) {
    const value = seconds[row] as number;
    if (Number.isNaN(value)) continue;
    if (Number.isNaN(first)) first = value;
    if (before - value > HALF_DAY) turns += 2;
    else if (before - value > HALF_DAY - TURN) turns += 1;
    before = value;
    // Rounded to the microsecond: the difference of two clock times has no more than the clock shows.
    seconds[row] = Math.round((value + turns * HALF_DAY - first) * 1e6) / 1e6;
  }
}
