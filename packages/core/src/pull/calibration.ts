import type { Calibration, Instrument } from './model.ts';

/** Days after which a calibration that nobody gave an end to is asked about. Common practice, no source. */
export const CALIBRATION_HOLDS_DAYS = 30;

const DAY_MS = 86_400_000;

/** How an instrument stood to its calibrations on one day. */
export interface CalibrationOnDay {
  instrument: Instrument;
  /** The last one made on or before the day; `null`: none was. */
  calibration: Calibration | null;
  /**
   * `run out`: its end had passed. `long ago`: no end was given and more than 30 days had passed. `none`: none noted up to
   * the day. `day unknown`: nobody knows which day to ask about.
   */
  state: 'in force' | 'run out' | 'long ago' | 'none' | 'day unknown';
  /** Whole days: past its end for `run out`, else since it was made; `null` without a calibration or a day. */
  days: number | null;
}

/**
 * The calibration that stood behind an instrument on a day (ISO 8601). Calibrations made later say nothing of it.
 *
 * @example calibrationOn(loadCell, '2026-03-14').state // 'in force'
 */
export function calibrationOn(instrument: Instrument, day: string | null): CalibrationOnDay {
  if (day === null) return { instrument, calibration: null, state: 'day unknown', days: null };
  const calibration =
    instrument.calibrations
      .filter((one) => one.day <= day)
      .toSorted((one, other) => one.day.localeCompare(other.day))
      .at(-1) ?? null;
  if (calibration === null) return { instrument, calibration, state: 'none', days: null };
  const since = daysBetween(calibration.day, day);
  if (calibration.validUntil !== null && day > calibration.validUntil)
    return { instrument, calibration, state: 'run out', days: daysBetween(calibration.validUntil, day) };
  const isLongAgo = calibration.validUntil === null && since > CALIBRATION_HOLDS_DAYS;
  return { instrument, calibration, state: isLongAgo ? 'long ago' : 'in force', days: since };
}

/** `in force, made 2026-03-10`; `ran out 2026-03-01, 13 days before`. */
export function calibrationText({ calibration, state, days }: CalibrationOnDay): string {
  if (state === 'day unknown') return 'day of the pull not noted';
  if (calibration === null) return 'none noted before the pull';
  if (state === 'run out') return `ran out ${calibration.validUntil}, ${dayCount(days!)} before the pull`;
  if (state === 'long ago')
    return `made ${calibration.day}, ${dayCount(days!)} before the pull, with no end noted`;
  const until = calibration.validUntil === null ? '' : `, to ${calibration.validUntil}`;
  return `in force, made ${calibration.day}${until}`;
}

const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

const dayCount = (days: number): string => `${days} day${days === 1 ? '' : 's'}`;
