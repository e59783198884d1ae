import { type Calibration, type Cell, type Instrument, MEANINGS } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { meaningByName, meaningsLike } from '../meaning-by-name.ts';
import { dayFromText } from './day-text.ts';
import { isUnknown, optionalQuantityFromText } from './quantity-text.ts';

/** A cell as a person writes it: text with units. Missing: not said. `null` or '': unknown. */
export interface CellText {
  name?: string | undefined;
  brake?: string | null | undefined;
  /** `210 m`, `690 ft` */
  altitude?: string | null | undefined;
  /** `0.12 kg·m²`: brake and coupling */
  momentOfInertia?: string | null | undefined;
  notes?: string | null | undefined;
}

export interface InstrumentText {
  name?: string | undefined;
  /** A channel's meaning or label, or `weather`. */
  measures?: string | undefined;
  serial?: string | null | undefined;
}

export interface CalibrationText {
  /** `2026-03-10` */
  day?: string | undefined;
  validUntil?: string | null | undefined;
  how?: string | null | undefined;
  found?: string | null | undefined;
  by?: string | null | undefined;
}

/** From below the lowest land to above any cell with an engine in it (common practice, no source), m. */
const ALTITUDE_M = [-430, 6000] as const;
/** A brake and its coupling heavier than this drive ships (common practice, no source), kg·m². */
const MOST_INERTIA = 1000;

/** What was said of a cell, checked; only the fields that were said. */
export function cellFromText(text: CellText): Result<Partial<Omit<Cell, 'id' | 'instruments'>>> {
  const altitude = optionalQuantityFromText(text.altitude, 'length', 'Altitude');
  const inertia = optionalQuantityFromText(text.momentOfInertia, 'momentOfInertia', 'Moment of inertia');
  const remarks = [...altitude.remarks, ...inertia.remarks];
  if (text.name !== undefined && text.name.trim() === '') remarks.push(noName('A cell', 'Cell 1'));
  if (altitude.ok && altitude.value !== null && !isWithin(altitude.value, ALTITUDE_M))
    remarks.push(
      absurd('Altitude', `${text.altitude}`, `${ALTITUDE_M[0]} m to ${ALTITUDE_M[1]} m above the sea`),
    );
  if (inertia.ok && inertia.value !== null && !(inertia.value > 0 && inertia.value <= MOST_INERTIA))
    remarks.push(
      absurd(
        'Moment of inertia',
        `${text.momentOfInertia}`,
        `above 0, up to ${MOST_INERTIA} kg·m²; leave it out where it is not known`,
      ),
    );
  if (!altitude.ok || !inertia.ok || remarks.some(({ level }) => level === 'refusal'))
    return refused(...(remarks as [Remark, ...Remark[]]));
  return accepted(
    onlySaid({
      name: text.name?.trim().replace(/\s+/gu, ' '),
      brake: orEmpty(text.brake),
      altitude: text.altitude === undefined ? undefined : altitude.value,
      momentOfInertia: text.momentOfInertia === undefined ? undefined : inertia.value,
      notes: orEmpty(text.notes),
    }),
    remarks,
  );
}

/** A new instrument without its id and calibrations. */
export function instrumentFromText(
  text: InstrumentText,
): Result<Pick<Instrument, 'name' | 'measures' | 'serial'>> {
  const name = text.name?.trim() ?? '';
  const given = text.measures?.trim() ?? '';
  const measures = given.toLowerCase() === 'weather' ? 'weather' : meaningByName(given);
  const remarks: Remark[] = [];
  if (name === '') remarks.push(noName('An instrument', 'load cell'));
  if (measures === undefined || measures === 'time' || measures === 'other') {
    const some = meaningsLike(given)
      .filter((one) => one !== 'time' && one !== 'other')
      .slice(0, 6)
      .map((one) => `${one} (${MEANINGS[one].label.toLowerCase()})`);
    remarks.push(
      remark(
        'refusal',
        'instrument-measures',
        `What the instrument measures: "${given}" is not a channel Pullbook knows. Accepted: weather (pressure, temperature and humidity of the air), ${some.join(', ')}, and the other channels.`,
      ),
    );
  }
  const [first, ...others] = remarks;
  if (first) return refused(first, ...others);
  return accepted({ name, measures: measures!, serial: text.serial?.trim() ?? '' });
}

/** A calibration. Its day is needed, not before its end, and not after `today` (ISO 8601 date). */
export function calibrationFromText(text: CalibrationText, today: string): Result<Calibration> {
  const day = dayFromText(text.day, 'Day of the calibration');
  const until = isUnknown(text.validUntil) ? accepted(null) : dayFromText(text.validUntil, 'Valid until');
  if (!day.ok || !until.ok) {
    return refused(...([...day.remarks, ...until.remarks] as [Remark, ...Remark[]]));
  }
  if (day.value > today)
    return refused(
      absurd('Day of the calibration', day.value, `up to today, ${today}: what is planned is no calibration`),
    );
  if (until.value !== null && until.value < day.value)
    return refused(absurd('Valid until', until.value, `the day of the calibration, ${day.value}, or later`));
  return accepted({
    day: day.value,
    validUntil: until.value,
    how: text.how?.trim() ?? '',
    found: text.found?.trim() ?? '',
    by: text.by?.trim() ?? '',
  });
}

const isWithin = (value: number, [low, high]: readonly [number, number]) => value >= low && value <= high;

const noName = (what: string, example: string): Remark =>
  remark('refusal', 'no-name', `${what} needs a name, such as "${example}".`);

const absurd = (field: string, given: string, allowed: string): Remark =>
  remark('refusal', 'cell-field', `${field}: "${given}" cannot be. Accepted: ${allowed}.`);

const orEmpty = (text: string | null | undefined): string | undefined =>
  text === undefined ? undefined : (text?.trim() ?? '');

function onlySaid<T extends object>(fields: { [Field in keyof T]: T[Field] | undefined }): Partial<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<T>;
}
