import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { type Remark, remark } from '@pullbook/core/remark';
import { plainWords } from './column-words.ts';
import type { Guess, UnguessedColumn } from './unguessed-column.ts';
import type { UnitByRange } from './usual-units.ts';

/** Asks for the unit of a column that names none, where its figures leave it open; `null`: they do not. */
export function unitNotNamed(
  column: UnguessedColumn,
  meaning: ChannelMeaning,
  { unit, fits, others }: UnitByRange,
): Remark | null {
  if (fits && others.length === 0) return null;
  const reason = fits
    ? `${others.join(' and ')} would fit as well`
    : `its figures, ${column.low} to ${column.high}, are unusual in every usual unit`;
  const message = `“${column.name}” is ${MEANINGS[meaning].label.toLowerCase()} and names no unit: ${unit} is taken, ${reason}. Say which it is.`;
  return remark('caution', 'unit-not-named', message, { column: column.index + 1 });
}

const VACUUM = /\bvac(uum)?\b|unterdruck|depression|\bvuoto\b|\bvacio\b/;
const OVER_PRESSURE = /boost|ladedruck/;

/** Asks about a column called vacuum whose readings have no minus sign: they count down from the air around. */
export function vacuumWithoutSign(column: UnguessedColumn, { kind }: Guess): Remark | null {
  const words = plainWords(column.name);
  const isPressure = kind === 'gaugePressure' || kind === 'absolutePressure';
  if (!isPressure || !VACUUM.test(words) || OVER_PRESSURE.test(words)) return null;
  if (!(column.high > 0 && column.high > -column.low)) return null;
  const message = `“${column.name}” is called vacuum and its readings, ${column.low} to ${column.high}, have no minus sign: they count down from the air around. It is kept with its name and unit, not as a pressure. Export it with the sign to have it as one.`;
  return remark('caution', 'vacuum-without-sign', message, { column: column.index + 1 });
}

const MULTIPLIER = /(^|[^\p{L}\d])[x×*/] ?10+\b/iu;

/** Asks about a column whose name holds a power of ten, `Torque x10`: whether its figures do as well is not said. */
export function multiplierInName(column: UnguessedColumn, { meaning, unit }: Guess): Remark | null {
  if (meaning === 'other' || unit === 'krpm' || !MULTIPLIER.test(column.name)) return null;
  const message = `“${column.name}” has a multiplier in its name; its figures, ${column.low} to ${column.high}, are taken as they stand, in ${unit}. Leave it out, or export it without the multiplier, if that is wrong.`;
  return remark('caution', 'multiplier-in-name', message, { column: column.index + 1 });
}

/** Two columns say the same as well: one is taken, and a person has to say whether it is the right one. */
export function sameMeaning(
  columns: readonly UnguessedColumn[],
  kept: number,
  equals: readonly number[],
  meaning: ChannelMeaning,
): Remark {
  const names = equals.map((index) => `“${columns[index]?.name}”`).join(', ');
  const message = `“${columns[kept]?.name}” is taken for ${MEANINGS[meaning].label.toLowerCase()}; ${names} may be it as well. Say which it is.`;
  return remark('caution', 'meaning-ambiguous', message, { column: kept + 1 });
}
