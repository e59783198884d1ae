import type { CombinationSheet } from './model.ts';
import { readSheet } from './read-sheet.ts';

/** A sheet for a test from its sections in plain form; a refusal is the test's own fault and throws. */
export function testSheet(sections: Record<string, Record<string, unknown>>): CombinationSheet {
  const read = readSheet({ schemaVersion: 1, name: 'Sheet of a test', ...sections });
  if (!read.ok) throw new Error(read.remarks.map(({ message }) => message).join('\n'));
  return read.value;
}
