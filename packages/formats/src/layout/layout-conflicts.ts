import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { formatNumber, toInside } from '@pullbook/core/quantity';
import type { ColumnMapping, FileReading, ReadColumn } from '../model.ts';
import { POSSIBLE } from '../pulls/possible-range.ts';
import { unitOfMeaning } from '../pulls/unit-of-meaning.ts';
import { columnKeys } from './column-keys.ts';
import { type ConfirmedLayout, suggestion } from './confirmed-layout.ts';
import { identityRatio } from './identity-ratio.ts';

/** Power and torque × speed may differ by this much before a remembered unit is doubted. */
const IDENTITY_SHARE = 0.02;
/** Up to this share of impossible readings is a glitch of a sensor, not a wrong unit. */
const GLITCH_SHARE = 0.01;

/**
 * Why what was remembered of a layout cannot be taken for this file without a look: sentences, none where it can. Power
 * against torque × speed, readings that cannot be, and columns without a unit in the header whose figures now suggest
 * another unit than any that was confirmed.
 */
export function layoutConflicts(
  reading: FileReading,
  mapping: readonly ColumnMapping[],
  layout: ConfirmedLayout,
): string[] {
  const keys = columnKeys(reading.columns);
  const known = columnKeys(layout.columns);
  const ofColumns = mapping.flatMap((said) => {
    const column = reading.columns[said.index];
    const confirmed = layout.columns[known.indexOf(keys[said.index] ?? '')];
    if (!column || !confirmed || said.meaning === null || said.meaning === 'other') return [];
    return [impossible(column, said), otherUnit(column, said, confirmed.suggested)].filter(
      (why) => why !== null,
    );
  });
  const ofIdentity = identityConflict(reading, mapping, layout.powerRatio);
  return ofIdentity === null ? ofColumns : [ofIdentity, ...ofColumns];
}

function identityConflict(
  reading: FileReading,
  mapping: readonly ColumnMapping[],
  confirmed: number | null,
): string | null {
  const ratio = identityRatio(reading, mapping);
  if (ratio === null || Math.abs(ratio - 1) <= IDENTITY_SHARE) return null;
  if (confirmed !== null && Math.abs(ratio / confirmed - 1) <= IDENTITY_SHARE) return null;
  return `Under the units confirmed before, power is ${formatNumber(ratio, 3, '.')} times torque × engine speed in this file; it was ${confirmed === null ? 'not compared' : `${formatNumber(confirmed, 3, '.')} times`} then.`;
}

function impossible(column: ReadColumn, { meaning, unit }: ColumnMapping): string | null {
  const possible = POSSIBLE[meaning!];
  const known = unitOfMeaning(meaning!, unit);
  if (!possible || !known) return null;
  const isOdd = (value: number) => {
    const inside = toInside(value, known);
    return inside < possible.low || inside > possible.high;
  };
  if (!isOdd(column.low) && !isOdd(column.high)) return null;
  const odd = column.values.filter(isOdd).length;
  if (odd <= GLITCH_SHARE * column.count) return null;
  return `“${column.name}” was ${MEANINGS[meaning!].label.toLowerCase()} in ${known.name}; ${odd} of its ${column.count} readings here, ${formatNumber(column.low, 1, '.')} to ${formatNumber(column.high, 1, '.')}, cannot be that.`;
}

function otherUnit(column: ReadColumn, said: ColumnMapping, suggested: readonly string[]): string | null {
  const now = suggestion(column.guess);
  const confirmed = suggestion({ meaning: said.meaning!, unit: said.unit });
  if (column.unitText !== '' || !isOfOneQuantity(column.guess.meaning, said.meaning!)) return null;
  if (now === confirmed || suggested.includes(now)) return null;
  return `“${column.name}” has no unit in the header; ${confirmed} was confirmed before, and its figures here, ${formatNumber(column.low, 1, '.')} to ${formatNumber(column.high, 1, '.')}, look like ${now}.`;
}

/** A confirmed meaning stands against a guess by range; only its unit, and whether a pressure is absolute, may be doubted. */
function isOfOneQuantity(guessed: ChannelMeaning, confirmed: ChannelMeaning): boolean {
  const isManifold = (meaning: ChannelMeaning) => meaning === 'boost' || meaning === 'manifoldPressure';
  return guessed === confirmed || (isManifold(guessed) && isManifold(confirmed));
}
