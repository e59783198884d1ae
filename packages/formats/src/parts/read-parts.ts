import type { PartsList } from '@pullbook/core/reach';
import { accepted, type Remark, type Result } from '@pullbook/core/remark';
import type { Reading } from '../match/shape.ts';
import { readWritten, type WrittenKind } from '../yaml/read-written.ts';
import { parts } from './parts-shape.ts';

const PARTS: WrittenKind = {
  called: 'a parts list',
  ifEmpty: 'Write at least one list, such as "blowerPulleys: [{ diameter: 78 mm, cost: 1 }]".',
  exampleLine: 'blowerPulleys: [{ diameter: 78 mm, cost: 1 }]',
  mostCharacters: 1_000_000,
};

/**
 * The lists that a parts file has, in inside units; what it leaves out stands as it was. All faults come at once, each with
 * its line and what is allowed.
 *
 * @example readPartsText('blowerPulleys: [{ from: 70 mm, to: 90 mm, step: 1 mm, cost: 1 }]')
 */
export function readPartsText(text: string, fileName = 'The file'): Result<Partial<PartsList>> {
  const written = readWritten(text, fileName, PARTS);
  if (!written.ok) return written;
  const { plain, placeOf, blockLine } = written.value;
  return readParts(plain, { placeOf, blockLine });
}

/** The same of a parts list in its plain form, as the shop's settings keep it. */
export const readPlainParts = (plain: unknown): Result<Partial<PartsList>> =>
  readParts(plain, { placeOf: () => null, blockLine: () => null });

function readParts(plain: unknown, places: Omit<Reading, 'remarks'>): Result<Partial<PartsList>> {
  const remarks: Remark[] = [];
  const read = parts.read(plain ?? {}, [], { remarks, ...places });
  const refusals = remarks.filter(({ level }) => level === 'refusal');
  if (refusals.length > 0 || read === undefined) return { ok: false, remarks: [...refusals] };
  return accepted(read, remarks);
}
