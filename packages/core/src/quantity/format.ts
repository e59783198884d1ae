import { fromInside } from './convert.ts';
import { decimalsFor, displayUnit } from './display.ts';
import type { DecimalMark, QuantityKind, UnitSystem } from './model.ts';
import type { Unit } from './unit.ts';

export interface NumberFormat {
  /** `+` before a positive number; default no. */
  sign?: boolean;
  /** Groups of three from four digits on: comma beside a point, narrow no-break space beside a comma; default no. */
  thousands?: boolean;
}

export interface QuantityFormat extends NumberFormat {
  system: UnitSystem;
  decimalMark: DecimalMark;
  /** Default: those of the kind in the display unit. */
  decimals?: number;
  /** Show in this unit instead of the system's, for a ratio as `%` say. */
  unit?: Unit;
}

/**
 * A number as people read it, with a real minus sign. What rounds to zero has no sign; what is not finite is an en dash.
 *
 * @example formatNumber(1234.56, 1, '.', { sign: true, thousands: true }) // '+1,234.6'
 */
export function formatNumber(
  value: number,
  decimals: number,
  decimalMark: DecimalMark,
  options: NumberFormat = {},
): string {
  if (!Number.isFinite(value)) return '–';
  const [whole = '', fraction = ''] = Math.abs(value).toFixed(decimals).split('.');
  const separator = decimalMark === '.' ? ',' : '\u202f';
  const grouped =
    options.thousands && whole.length > 3 ? whole.replace(/\B(?=(?:\d{3})+$)/gu, separator) : whole;
  const digits = fraction === '' ? grouped : `${grouped}${decimalMark}${fraction}`;
  const isZero = !/[1-9]/u.test(digits);
  if (isZero) return digits;
  if (value < 0) return `−${digits}`;
  return options.sign ? `+${digits}` : digits;
}

/**
 * A value of the inside unit as number, unit and both together, in the people's units asked for. Thousands are grouped unless
 * asked otherwise. Degree, per cent and `:1` signs follow the usual spacing: `9.5:1`, `30 °C`, `12°`.
 *
 * @example formatQuantity(100_000, 'power', { system: 'us', decimalMark: '.' }).text // '134.1 hp'
 */
export function formatQuantity(
  value: number,
  kind: QuantityKind,
  options: QuantityFormat,
): { number: string; unit: string; text: string } {
  const { system, decimalMark, sign = false, thousands = true } = options;
  const unit = options.unit ?? displayUnit(kind, system);
  const decimals = options.decimals ?? decimalsFor(kind, system);
  const number = formatNumber(fromInside(value, unit), decimals, decimalMark, { sign, thousands });
  const space = unit.name === '' || unit.name === '°' || unit.name === ':1' ? '' : '\u00a0';
  return { number, unit: unit.name, text: `${number}${space}${unit.name}` };
}
