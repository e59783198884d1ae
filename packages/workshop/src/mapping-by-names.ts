import type { ChannelMeaning } from '@pullbook/core/pull';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { ColumnMapping, FileReading } from '@pullbook/formats';
import { meaningByName, meaningsLike } from './meaning-by-name.ts';

/**
 * A mapping changed by a person's words, one a column: `Load=torque:N·m`, `Load=torque` (unit as guessed),
 * `Counter=leave out`. A column is named as in the file's header, or by its number from 1.
 */
export function mappingByNames(
  reading: FileReading,
  mapping: ColumnMapping[],
  words: readonly string[],
): Result<ColumnMapping[]> {
  let result = mapping;
  for (const word of words) {
    const changed = changedBy(word, reading, result);
    if (!changed.ok) return changed;
    result = changed.value;
  }
  return accepted(result);
}

function changedBy(word: string, reading: FileReading, mapping: ColumnMapping[]): Result<ColumnMapping[]> {
  const split = word.lastIndexOf('=');
  const columnName = word.slice(0, split).trim();
  const [meaningText = '', unitText] = word.slice(split + 1).split(/:(.*)/s);
  if (split < 1 || meaningText.trim() === '') {
    return refuse(`"${word}" is not a column mapping. Write Column=meaning:unit, such as "Load=torque:N·m".`);
  }
  const column =
    reading.columns.find((one) => one.name.toLowerCase() === columnName.toLowerCase()) ??
    reading.columns.find((one) => String(one.index + 1) === columnName);
  if (!column) {
    return refuse(
      `${reading.name} has no column "${columnName}". It has: ${reading.columns.map((one) => one.name).join(', ')}.`,
    );
  }
  const meaning = meaningFrom(meaningText.trim());
  if (meaning === undefined) {
    return refuse(
      `"${meaningText}" is not a meaning. Accepted: ${meaningsLike(meaningText).join(', ')}, leave out.`,
    );
  }
  const unit = unitText?.trim() ?? (meaning === column.guess.meaning ? column.guess.unit : column.unitText);
  const entry = { index: column.index, meaning, unit };
  return accepted(
    [...mapping.filter((one) => one.index !== column.index), entry].sort((a, b) => a.index - b.index),
  );
}

function meaningFrom(text: string): ChannelMeaning | null | undefined {
  return /^leave[\s_-]*out$/i.test(text) ? null : meaningByName(text);
}

const refuse = (message: string) => refused(remark('refusal', 'column-mapping', message));
