import { randomUUID } from 'node:crypto';
import type { OriginalFile, Pull } from '@pullbook/core/pull';
import { type ColumnMapping, pullsFromReading, readTextFile } from '@pullbook/formats';
import {
  type Book,
  damageOf,
  faultsOfBook,
  RESCUE_TO_TELL,
  type RescueReport,
  rescueBook as rescueStore,
} from '@pullbook/store';
import { writtenPull } from './written-pull.ts';

/** What is wrong with the book in a folder, in words; `null`: nothing. Reads all of it: every page and every curve. */
export async function faultOfBook(folder: string): Promise<string | null> {
  return damageOf(folder) ?? (await faultsOfBook(folder))[0] ?? null;
}

/**
 * Makes a sound book of a damaged one, in its place, as far as it can still be read; curves come from the original files
 * where their pages are lost, and only where they are the same, sample by sample. The damaged files stay beside it.
 */
export function rescueBook(folder: string, now: Date): Promise<RescueReport> {
  return rescueStore(folder, (file, bytes) => readAgain(file, bytes, now), now);
}

/** The report of a rescue that nobody has put away yet; `null`: none. */
export async function rescueToTell(book: Book): Promise<RescueReport | null> {
  return ((await book.settings())[RESCUE_TO_TELL] as RescueReport | undefined) ?? null;
}

/** Puts the notice of a rescue away; the report stays in the history and in the folder of the damaged files. */
export async function putRescueAway(book: Book): Promise<void> {
  if ((await rescueToTell(book)) !== null) await book.changeSettings({ [RESCUE_TO_TELL]: null });
}

/** The report in words, one line each. */
export function rescueLines(report: RescueReport): string[] {
  const { kept, madeAgain, lost, poorer, unreadable, damagedFolder } = report;
  const named = (name: string, id: string) => (name === '' ? id : `"${name}"`);
  return [
    `Rescued: ${kept.pulls} pulls, ${kept.trials} trials, ${kept.combinations} combinations, ${kept.compressorMaps} compressor maps, ${kept.publications} publications, ${kept.enquiries} enquiries, ${kept.files} files.`,
    ...madeAgain.map(({ id, name, what }) => `made again: pull ${named(name, id)}: ${what}`),
    ...lost.map(({ kind, id, name, what }) => `lost: ${kind} ${named(name, id)}: ${what}`),
    ...poorer.map(({ kind, id, name, what }) => `kept, but poorer: ${kind} ${named(name, id)}: ${what}`),
    ...(unreadable > 0 ? [`${unreadable} records on damaged pages could not be read.`] : []),
    ...(lost.length + poorer.length + unreadable === 0 ? ['Nothing is lost.'] : []),
    `The damaged files are as they were in ${damagedFolder}.`,
  ];
}

function readAgain(file: OriginalFile, bytes: Uint8Array, now: Date): Pull[] | null {
  if (!Array.isArray(file.mapping)) return null;
  const reading = readTextFile(bytes, file.name);
  if (!reading.ok) return null;
  const drafts = pullsFromReading(reading.value, file.mapping as ColumnMapping[]);
  if (!drafts.ok) return null;
  const text =
    'What was written down of this pull was lost with a damaged page; its curve is from the original file.';
  return drafts.value.map((draft) => ({
    ...writtenPull({}, { standard: 'not stated', factor: null }),
    id: randomUUID(),
    name: draft.name,
    form: 'curve' as const,
    channels: draft.channels,
    summary: null,
    origin: 'measured' as const,
    fileHash: file.hash,
    notes: [{ at: now.toISOString(), text }],
  }));
}
