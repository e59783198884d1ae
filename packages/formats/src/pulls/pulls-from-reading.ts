import { type Channel, type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { KIND_NAME, type QuantityKind, unitsOfKind } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { ColumnMapping, FileReading, PullDraft, ReadColumn, RowGroup } from '../model.ts';
import { unitOfSpelling } from '../text/unit-spelling.ts';
import { checkPossible } from './check-possible.ts';
import { unitOfMeaning } from './unit-of-meaning.ts';

/** A pull has one channel of each of these. */
const ONCE: readonly ChannelMeaning[] = ['time', 'engineSpeed', 'torque', 'power'];

/**
 * Pulls of a reading under a confirmed mapping, one a block of rows, with channels in inside units.
 *
 * Refused: no engine speed; an unknown unit; two columns for one of time, engine speed, torque, power; fewer than two
 * rows with an engine speed; impossible values. Without torque and power a pull is accepted with a caution.
 *
 * @example pullsFromReading(reading, guessedMapping(reading))
 */
export function pullsFromReading(reading: FileReading, mapping: ColumnMapping[]): Result<PullDraft[]> {
  const trouble = mappingTrouble(reading, mapping);
  const [first, ...others] = trouble;
  if (first) return refused(first, ...others);

  const channels: { column: ReadColumn; channel: Channel }[] = [];
  const remarks: Remark[] = [];
  for (const { index, meaning, unit } of mapping) {
    const column = reading.columns[index];
    if (!column || meaning === null) continue;
    const channel = channelFromColumn(column, meaning, unit);
    const known = meaning === 'other' ? null : unitOfMeaning(meaning, unit);
    const impossible = known && checkPossible(column, meaning, known, channel.values, reading.lineOfRow);
    if (impossible?.level === 'refusal') return refused(impossible, ...remarks);
    if (impossible) remarks.push(impossible);
    channels.push({ column, channel });
  }
  const has = (meaning: ChannelMeaning) => channels.some(({ channel }) => channel.meaning === meaning);
  if (!has('torque') && !has('power')) {
    const message =
      'No column is torque or power: the pull is kept, but shows no curve of either. Say which column is torque or power if there is one.';
    remarks.push(remark('caution', 'no-torque-or-power', message));
  }
  const drafts: PullDraft[] = [];
  for (const group of reading.groups) {
    const draft = draftOf(
      reading,
      group,
      channels.map(({ channel }) => channel),
    );
    const usable = usableRows(draft.channels);
    if (usable >= 2) drafts.push(draft);
    else {
      const whole = reading.groups.length === 1;
      const found = remark(whole ? 'refusal' : 'caution', 'one-row', tooFewRowsWords(draft.name, usable), {
        line: reading.lineOfRow[group.fromRow] ?? 1,
      });
      if (whole) return refused(found, ...remarks);
      remarks.push(found);
    }
  }
  if (drafts.length === 0) {
    const [reason, ...rest] = remarks.filter(({ code }) => code === 'one-row');
    return refused(
      reason ? { ...reason, level: 'refusal' } : remark('refusal', 'one-row', 'No block of rows is a pull.'),
      ...rest,
    );
  }
  return accepted(drafts, remarks);
}

function mappingTrouble(reading: FileReading, mapping: readonly ColumnMapping[]): Remark[] {
  const found: Remark[] = [];
  const taken = new Map<ChannelMeaning, string>();
  for (const { index, meaning, unit } of mapping) {
    const column = reading.columns[index];
    if (!column) {
      const message = `The mapping names column ${index + 1}; ${reading.name} has ${reading.columns.length}. Map columns 1 to ${reading.columns.length}.`;
      found.push(remark('refusal', 'no-such-column', message, { column: index + 1 }));
      continue;
    }
    if (meaning === null || meaning === 'other') continue;
    const place = { line: reading.layout.unitLine ?? reading.layout.headerLine ?? 1, column: index + 1 };
    if (!Object.hasOwn(MEANINGS, meaning)) {
      const message = `“${meaning}” is no meaning of a column. Allowed: ${Object.keys(MEANINGS).join(', ')}.`;
      found.push(remark('refusal', 'unknown-meaning', message, place));
      continue;
    }
    if (!unitOfMeaning(meaning, unit))
      found.push(remark('refusal', 'unknown-unit', unknownUnitWords(column, meaning, unit), place));
    const other = taken.get(meaning);
    if (other !== undefined && ONCE.includes(meaning)) {
      const label = MEANINGS[meaning].label.toLowerCase();
      const message = `“${other}” and “${column.name}” are both mapped to ${label}; a pull has one. Map one of them to something else, or leave it out.`;
      found.push(remark('refusal', 'mapped-twice', message, place));
    }
    taken.set(meaning, column.name);
  }
  if (!taken.has('engineSpeed')) {
    const names = reading.columns.filter(({ count }) => count > 0).map(({ name }) => `“${name}”`);
    const shown = names.slice(0, 12).join(', ') + (names.length > 12 ? ', …' : '');
    const message = `No column is engine speed, and every curve stands on it. Say which of ${shown} is engine speed.`;
    found.push(remark('refusal', 'no-engine-speed', message, { line: reading.layout.headerLine ?? 1 }));
  }
  return found;
}

function unknownUnitWords(column: ReadColumn, meaning: ChannelMeaning, unit: string): string {
  const { kind, label } = MEANINGS[meaning];
  const allowed = unitsOfKind(kind)
    .map(({ name }) => name)
    .filter((name) => name !== '')
    .join(', ');
  const stated =
    unit.trim() === '' ? 'has no unit' : `has the unit “${unit}”, which is none of ${KIND_NAME[kind]}`;
  return `“${column.name}”, mapped to ${label.toLowerCase()}, ${stated}. Allowed: ${allowed}.`;
}

function channelFromColumn(column: ReadColumn, meaning: ChannelMeaning, unitText: string): Channel {
  const unit = meaning === 'other' ? unitOfSpelling(unitText) : unitOfMeaning(meaning, unitText);
  const kind: QuantityKind = meaning === 'other' ? (unit?.kind ?? 'ratio') : MEANINGS[meaning].kind;
  const values = column.values.slice();
  // The rule of `toInside`, whose look-up of the unit is left out of the loop.
  if (unit && (unit.factor !== 1 || unit.offset !== 0))
    for (let row = 0; row < values.length; row++)
      values[row] = (values[row] as number) * unit.factor + unit.offset;
  return { meaning, name: column.name, unit: unit?.name ?? unitText, kind, values, origin: 'measured' };
}

function draftOf(reading: FileReading, group: RowGroup, channels: readonly Channel[]): PullDraft {
  const name = group.name || reading.name.replace(/\.[a-z0-9]{1,5}$/i, '').trim() || 'Pull';
  return {
    name,
    channels: channels.map((channel) => ({
      ...channel,
      // One group alone has the values to itself.
      values:
        group.fromRow === 0 && group.toRow === reading.rowCount - 1
          ? channel.values
          : channel.values.slice(group.fromRow, group.toRow + 1),
    })),
    remarks: [],
  };
}

/** Rows with an engine speed and, where the pull has either, torque or power. */
function usableRows(channels: readonly Channel[]): number {
  const speed = channels.find(({ meaning }) => meaning === 'engineSpeed');
  const figures = channels.filter(({ meaning }) => meaning === 'torque' || meaning === 'power');
  let rows = 0;
  speed?.values.forEach((value, row) => {
    if (Number.isNaN(value)) return;
    if (figures.length === 0 || figures.some(({ values }) => !Number.isNaN(values[row]))) rows += 1;
  });
  return rows;
}

function tooFewRowsWords(name: string, usable: number): string {
  const advice =
    'Enter a single figure as a summary (peak power and torque with their speeds), or give the whole log.';
  const found = usable === 0 ? 'no row' : 'only one row';
  return `“${name}” has ${found} with engine speed and torque or power; a pull needs at least 2. ${usable === 1 ? 'One row is not a pull. ' : ''}${advice}`;
}
