import { type PartsList, usualParts } from '@pullbook/core/reach';
import { accepted, type Result } from '@pullbook/core/remark';
import { type PlainParts, partsToPlain, partsToYaml, readPartsText, readPlainParts } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import { changeSettings, settingsOf } from '../settings.ts';

/** The parts list as it leaves the program. */
export interface PartsReport {
  schemaVersion: 1;
  /** The shop changed it; else it is what is usual. */
  isOwn: boolean;
  /** As it is written, text with units. */
  parts: PlainParts;
  /** The same as YAML, to be edited and given back. */
  text: string;
  /** What was looked at, for a change that must not overwrite another unseen. */
  stamp: string;
}

/** What the shop can buy: its own list, else what is usual. */
export async function partsListOf(book: Book | null): Promise<PartsList> {
  if (book === null) return usualParts();
  const { partsList } = await settingsOf(book);
  const own = partsList === null ? null : readPlainParts(partsList);
  return own?.ok ? { ...usualParts(), ...own.value } : usualParts();
}

/** The parts list for the edge; without a book what is usual. */
export async function partsReport(book: Book | null): Promise<PartsReport> {
  // The stamp before the list: what is written in between makes a change be asked again, never lost.
  const stamp = book === null ? '' : await book.stamp('settings');
  const list = await partsListOf(book);
  const isOwn = book !== null && (await settingsOf(book)).partsList !== null;
  return { schemaVersion: 1, isOwn, parts: partsToPlain(list), text: partsToYaml(list), stamp };
}

/**
 * Puts lists in place of the shop's: those that the text has; the others stay. Nothing is changed where anything of it cannot
 * be read; each fault has its line and what is allowed.
 */
export async function changePartsList(
  book: Book,
  text: string,
  { fileName = 'The parts list', stamp }: { fileName?: string | undefined; stamp?: string | undefined } = {},
): Promise<Result<PartsReport>> {
  const read = readPartsText(text, fileName);
  if (!read.ok) return read;
  const list = { ...(await partsListOf(book)), ...read.value };
  const changed = await changeSettings(book, { partsList: partsToPlain(list) }, stamp);
  return changed.ok ? accepted(await partsReport(book), read.remarks) : changed;
}

/** Back to what is usual. */
export async function resetPartsList(book: Book, stamp?: string): Promise<Result<PartsReport>> {
  const changed = await changeSettings(book, { partsList: null }, stamp);
  return changed.ok ? accepted(await partsReport(book)) : changed;
}
