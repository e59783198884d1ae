import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { formatNumber, fromInside, toInside, type Unit } from '@pullbook/core/quantity';
import { type Remark, remark } from '@pullbook/core/remark';
import type { ReadColumn } from '../model.ts';
import { POSSIBLE } from './possible-range.ts';

/** Up to this share of impossible readings is a glitch of a pick-up and is left out; more is a wrong unit or column. */
const GLITCH_SHARE = 0.01;

/**
 * Looks for values that cannot be. In a channel the pull stands on they refuse the import, unless they are a handful
 * in a long log: those become missing, with a caution. In other channels they stay, with a caution.
 */
export function checkPossible(
  column: ReadColumn,
  meaning: ChannelMeaning,
  unit: Unit,
  values: Float64Array,
  lineOfRow: Uint32Array,
): Remark | null {
  const slow = meaning === 'engineSpeed' ? tooSlow(column, unit, lineOfRow) : null;
  if (slow) return slow;
  const possible = POSSIBLE[meaning];
  if (!possible) return null;
  const rows: number[] = [];
  let finite = 0;
  values.forEach((value, row) => {
    if (Number.isNaN(value)) return;
    finite += 1;
    if (value < possible.low || value > possible.high) rows.push(row);
  });
  const first = rows[0];
  if (first === undefined) return null;
  const shown = (value: number) => shownNumber(fromInside(value, unit));
  const line = lineOfRow[first] ?? 0;
  const place = { line, column: column.index + 1 };
  const more = rows.length > 1 ? ` (and in ${rows.length - 1} more rows)` : '';
  const what = `“${column.name}” in line ${line}${more} is ${shown(values[first] as number)} ${unit.name}; ${MEANINGS[meaning].label.toLowerCase()} can lie between ${shown(possible.low)} and ${shown(possible.high)} ${unit.name}.`;
  if (!possible.decisive)
    return remark(
      'caution',
      'impossible-value',
      `${what} The value is kept; check the unit and the sensor.`,
      place,
    );
  if (rows.length <= GLITCH_SHARE * finite) {
    for (const row of rows) values[row] = Number.NaN;
    return remark('caution', 'impossible-value', `${what} It counts as missing.`, place);
  }
  const advice = 'Choose the right column or unit for it, or mend the row in a copy of the file.';
  return remark('refusal', 'impossible-value', `${what} ${advice}`, place);
}

/** No engine turns over a whole pull so slowly, r/min. */
const SLOWEST_RPM = 60;

/** Thousands of r/min, or a mark between thousands that was read as a decimal mark. */
function tooSlow(column: ReadColumn, unit: Unit, lineOfRow: Uint32Array): Remark | null {
  const highRpm = toInside(column.high, unit);
  if (!(highRpm > 0 && highRpm < SLOWEST_RPM)) return null;
  const message = `“${column.name}” never exceeds ${column.high} ${unit.name}; no engine makes a pull below ${SLOWEST_RPM} rpm. If it counts in thousands, or its point or comma stands between thousands, choose krpm for it; else choose the right column or unit.`;
  return remark('refusal', 'impossible-value', message, {
    line: lineOfRow[0] ?? 0,
    column: column.index + 1,
  });
}

function shownNumber(value: number): string {
  const large = Math.abs(value) >= 100 || Number.isInteger(value);
  return Math.abs(value) >= 1e7 ? value.toExponential(2) : formatNumber(value, large ? 0 : 2, '.');
}
