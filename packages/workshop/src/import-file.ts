import { randomUUID } from 'node:crypto';
import { CORRECTIONS, type CorrectionId } from '@pullbook/core/air';
import { defaultRecipe, type Pull, viewPull } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import {
  type ColumnMapping,
  guessedMapping,
  type PullDraft,
  pullsFromReading,
  readTextFile,
} from '@pullbook/formats';
import { type Book, BookTrouble } from '@pullbook/store';
import type { PullDetails } from './edge/pull-details.ts';
import { type PullFigures, pullFigures } from './edge/pull-figures.ts';
import { mappingByNames } from './mapping-by-names.ts';
import { hashOf } from './read-file.ts';
import { sessionFor } from './session.ts';
import { withSetUp } from './set-up.ts';
import { treatmentTrouble } from './treatment.ts';
import { withCombination } from './with-combination.ts';
import { writtenPull } from './written-pull.ts';

export interface FileToImport {
  name: string;
  bytes: Uint8Array;
  /** What each column means; missing: as guessed. */
  mapping?: ColumnMapping[] | undefined;
  /** Changes to the guessed meaning by column name: `Load=torque:N·m`. */
  columns?: string[] | undefined;
  details?: PullDetails | undefined;
}

export interface ImportReport {
  /** Figures as the file carries them, or observed. Empty ids in a preview. */
  pulls: (PullFigures & { id: string })[];
  remarks: Remark[];
  /** The book had these bytes already: its pulls are returned, nothing was added. */
  alreadyKnown: boolean;
}

/**
 * Puts a file into the book: original bytes and every pull in it in one step, or nothing at all. The same bytes twice
 * give the pulls the book already has.
 */
export async function importFile(book: Book, file: FileToImport): Promise<Result<ImportReport>> {
  const hash = hashOf(file.bytes);
  const known = await knownPulls(book, hash, file.name);
  if (known) return accepted(known);
  const combination = await withCombination(book, file.details ?? {});
  if (!combination.ok) return combination;
  const drafted = draftedPulls(file, combination.value);
  if (!drafted.ok) return drafted;
  const fitted = await withSetUp(book, combination.value, new Date().toISOString());
  if (!fitted.ok) return fitted;
  const { mapping } = drafted.value;
  const pulls = drafted.value.pulls.map((pull) => ({ ...pull, setUpId: fitted.value.setUpId ?? null }));
  const session = await sessionFor(book, combination.value);
  const placed = session === null ? pulls : pulls.map((pull) => ({ ...pull, sessionId: session }));
  const original = {
    hash,
    name: file.name,
    byteLength: file.bytes.byteLength,
    addedAt: new Date().toISOString(),
    mapping,
  };
  try {
    await book.addFileWithPulls(original, file.bytes, placed);
  } catch (trouble) {
    const meanwhile = isExists(trouble) ? await knownPulls(book, hash, file.name) : null;
    if (meanwhile) return accepted(meanwhile);
    throw trouble;
  }
  return accepted(report(placed, drafted.remarks));
}

/** What `importFile` would put into the book. Stores nothing. */
export function previewImport(file: FileToImport): Result<ImportReport> {
  const drafted = draftedPulls(file, file.details ?? {});
  if (!drafted.ok) return drafted;
  const { pulls, remarks } = report(drafted.value.pulls, drafted.remarks);
  return accepted({ pulls: pulls.map((pull) => ({ ...pull, id: '' })), remarks, alreadyKnown: false });
}

function draftedPulls(
  file: FileToImport,
  details: PullDetails,
): Result<{ pulls: Pull[]; mapping: ColumnMapping[] }> {
  const reading = readTextFile(file.bytes, file.name);
  if (!reading.ok) return reading;
  const mapping = mappingByNames(
    reading.value,
    file.mapping ?? guessedMapping(reading.value),
    file.columns ?? [],
  );
  if (!mapping.ok) return mapping;
  const drafts = pullsFromReading(reading.value, mapping.value);
  if (!drafts.ok) return drafts;
  const hash = hashOf(file.bytes);
  const pulls = drafts.value.map((draft) => pullFromDraft(draft, details, hash, drafts.value.length > 1));
  const [trouble, ...others] = details.treatment
    ? treatmentTrouble({ ...pulls[0]!, channels: null }, details.treatment)
    : [];
  if (trouble) return refused(trouble, ...others);
  const remarks = withoutTwins([
    ...reading.remarks,
    ...drafts.remarks,
    ...drafts.value.flatMap((draft) => draft.remarks),
  ]);
  return accepted({ pulls, mapping: mapping.value }, remarks);
}

function pullFromDraft(
  draft: PullDraft,
  details: PullDetails,
  fileHash: string,
  severalInFile: boolean,
): Pull {
  const given = details.name;
  return {
    ...writtenPull(details, { standard: 'not stated', factor: null }),
    id: randomUUID(),
    name: given === undefined ? draft.name : severalInFile ? `${given}, ${draft.name}` : given,
    form: 'curve',
    channels: draft.channels,
    summary: null,
    origin: 'measured',
    fileHash,
  };
}

function report(pulls: Pull[], readingRemarks: Remark[]): ImportReport {
  const views = pulls.map((pull) => viewPull(pull, asCarried(pull)));
  return {
    pulls: pulls.map((pull, index) => ({ id: pull.id, ...pullFigures(pull, views[index]!) })),
    remarks: withoutTwins([...readingRemarks, ...views.flatMap((view) => view.remarks)]),
    alreadyKnown: false,
  };
}

/** The recipe that leaves torque and power as the file carries them. */
export function asCarried(pull: Pick<Pull, 'carried'>) {
  const { standard } = pull.carried;
  return defaultRecipe(standard in CORRECTIONS ? (standard as CorrectionId) : 'observed');
}

async function knownPulls(book: Book, hash: string, name: string): Promise<ImportReport | null> {
  const ids = await book.pullIdsOfFile(hash);
  if (ids.length === 0) return null;
  const { pulls, remarks } = report(await book.pulls(ids), []);
  const note = remark(
    'note',
    'file-already-known',
    `${name} is in the book already, byte for byte: nothing was added, and what the book says of its pulls stays as it is.`,
  );
  return { pulls, remarks: [note, ...remarks], alreadyKnown: true };
}

function withoutTwins(remarks: Remark[]): Remark[] {
  const key = (one: Remark): string => [one.code, one.line, one.column, one.message].join('\n');
  return [...new Map(remarks.map((one) => [key(one), one])).values()];
}

const isExists = (trouble: unknown): boolean => trouble instanceof BookTrouble && trouble.code === 'exists';
