import { entryPattern } from '@pullbook/core/combination';
import {
  KIND_NAME,
  parseNumber,
  parseQuantity,
  type QuantityKind,
  unitsOfKind,
} from '@pullbook/core/quantity';
import { inWords, isUnknown, refuse, type Shape } from './shape.ts';

interface QuantityOptions {
  /** Inside unit; outside is a slip of the unit and refused. Wide on purpose. Common practice, no source. */
  allowed: readonly [low: number, high: number];
  example: string;
  about: string;
}

/** A number with its unit, as text: `12 kPa`. A ratio may be a bare number. */
export const quantity = (
  kind: QuantityKind,
  { allowed, example, about }: QuantityOptions,
): Shape<number> => ({
  get schema() {
    return {
      type: kind === 'ratio' ? ['string', 'number', 'null'] : ['string', 'null'],
      pattern: entryPattern([kind]),
      description: `${about} For example ${example}.`,
    };
  },
  read: (value, path, reading) => {
    if (isUnknown(value)) return undefined;
    const instead = `Write for example "${example}".`;
    if (typeof value !== 'string' && typeof value !== 'number')
      return refuse(
        reading,
        path,
        'match-quantity',
        `${inWords(value)} stands where ${KIND_NAME[kind]} is due. ${instead}`,
      );
    const written = String(value);
    const bare = parseNumber(written.replace(/\s*:\s*1$/, ''), 'either');
    if (bare !== null && kind !== 'ratio') {
      const units = unitsOfKind(kind).map(({ name }) => name);
      return refuse(
        reading,
        path,
        'unit-missing',
        `${written} has no unit. ${instead} Accepted: ${units.join(', ')}.`,
      );
    }
    const read = bare === null ? parseQuantity(written, kind, { decimalMark: 'either' }) : null;
    if (read !== null && !read.ok)
      return refuse(reading, path, read.remarks[0]!.code, `${read.remarks[0]!.message} ${instead}`);
    const number = read === null ? bare! : read.value;
    if (number >= allowed[0] && number <= allowed[1]) return number;
    return refuse(
      reading,
      path,
      'value-impossible',
      `${written} cannot be. Check the number and its unit. ${instead}`,
    );
  },
});

/** A bare or per-cent ratio: the most usual of all. */
export const ratio = (allowed: readonly [number, number], example: string, about: string): Shape<number> =>
  quantity('ratio', { allowed, example, about });

const PER_MASS_AND_KELVIN = /^\s*([^a-z]*?\d)\s*(k?)J\s*\/?\s*\(?\s*kg\s*[·*./ ]?\s*K\s*\)?\s*$/i;

/** J/(kg·K), which no other place of Pullbook enters: `1005 J/(kg K)`, `1.005 kJ/(kg·K)`. */
export const heatCapacity = (
  allowed: readonly [number, number],
  example: string,
  about: string,
): Shape<number> => ({
  schema: { type: 'string', description: `${about} For example ${example}.` },
  read: (value, path, reading) => {
    if (isUnknown(value)) return undefined;
    const [, digits, kilo] = PER_MASS_AND_KELVIN.exec(String(value)) ?? [];
    const number = digits === undefined ? null : parseNumber(digits, 'either');
    const joule = number === null ? Number.NaN : number * (kilo === '' ? 1 : 1000);
    if (joule >= allowed[0] && joule <= allowed[1]) return joule;
    return refuse(
      reading,
      path,
      'match-quantity',
      `${inWords(value)} cannot be. Write for example "${example}", from ${allowed[0]} to ${allowed[1]} J/(kg·K).`,
    );
  },
});
