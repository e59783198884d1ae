import { randomUUID } from 'node:crypto';
import type { Pull } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, refused, remark, remarkAbout } from '@pullbook/core/remark';
import type { Finding, RuleContext } from '@pullbook/core/rule';
import { type ColumnMapping, type FileReading, guessedMapping, type PullDraft } from '@pullbook/formats';
import { type Book, BookTrouble, OriginalChanged } from '@pullbook/store';
import type { PullDetails } from './edge/pull-details.ts';
import type { PullFigures } from './edge/pull-figures.ts';
import { confirmedKind, doubt, type KnownKind, kindRemarks, knownKind, withSaidOfKind } from './layouts.ts';
import { withLike } from './like-pull.ts';
import { longWork } from './long-work/long-work.ts';
import { changedWhileRead, type FileSource, type SourceRead } from './long-work/read-source.ts';
import { mappingByNames } from './mapping-by-names.ts';
import { baselineLeaving } from './plan-guard.ts';
import { nextPullName } from './pull-moment.ts';
import { sessionFor } from './session.ts';
import { withSetUp } from './set-up.ts';
import { settingsOf } from './settings.ts';
import { inAgain, takenBack, wouldBeInAgain } from './taken-back.ts';
import { treatmentTrouble } from './treatment.ts';
import { withCombination } from './with-combination.ts';
import { withShopCell } from './with-shop-cell.ts';
import { writtenPull } from './written-pull.ts';

export type FileToImport = FileSource & WhatToImport;

interface WhatToImport {
  name: string;
  /** What each column means, confirmed; missing: as remembered of its kind of file, else as guessed. */
  mapping?: ColumnMapping[] | undefined;
  /** Changes to the guessed meaning by column name: `Load=torque:N·m`. */
  columns?: string[] | undefined;
  details?: PullDetails | undefined;
  /** `last`, or the pull whose written details stand where nothing is said of this one. */
  like?: string | undefined;
  /** What is remembered of its kind of file is not used. */
  readAnew?: boolean | undefined;
}

export interface ImportReport {
  /** Figures as the file carries them, or observed. Empty ids in a preview. */
  pulls: (PullFigures & { id: string })[];
  /** What the rules say of the pulls by themselves. */
  findings: Finding[];
  remarks: Remark[];
  /** The book had these bytes already: its pulls are returned, nothing was added. */
  alreadyKnown: boolean;
}

/**
 * Puts a file into the book: original bytes and every pull in it in one step, or nothing at all. The same bytes twice
 * give the pulls the book already has.
 */
export async function importFile(book: Book, file: FileToImport): Promise<Result<ImportReport>> {
  const { reading: read, hash, byteLength } = await longWork.run('readFile', sourceOf(file));
  const known = hash === null ? null : await knownPulls(book, hash, file.name);
  if (known) return accepted(known);
  if (!read.ok || hash === null) return refusedReading(read);
  const drafted = await draftedPulls(book, file, read, hash);
  if (!drafted.ok) return drafted;
  const { reading, mapping, details } = drafted.value;
  const fitted = await withSetUp(book, details, new Date().toISOString());
  if (!fitted.ok) return fitted;
  const pulls = drafted.value.pulls.map((pull) => ({ ...pull, setUpId: fitted.value.setUpId ?? null }));
  const session = await sessionFor(book, details);
  const placed = session === null ? pulls : pulls.map((pull) => ({ ...pull, sessionId: session }));
  const original = {
    hash,
    name: file.name,
    byteLength,
    addedAt: new Date().toISOString(),
    mapping,
  };
  const isConfirmed = file.mapping !== undefined || (file.columns ?? []).length > 0;
  const kind = isConfirmed ? await confirmedKind(book, reading, mapping, details) : undefined;
  const again = await takenBack(book, hash);
  const leaving = await baselineLeaving(book, details.combinationId);
  try {
    await book.addFileWithPulls(original, file.bytes ?? { path: file.path }, placed, kind);
  } catch (trouble) {
    if (trouble instanceof OriginalChanged) return refused(changedWhileRead(file.name));
    const meanwhile = isExists(trouble) ? await knownPulls(book, hash, file.name) : null;
    if (meanwhile) return accepted(meanwhile);
    throw trouble;
  }
  return accepted(
    await report(book, placed, [...(again ? [inAgain(again)] : []), ...leaving, ...drafted.remarks]),
  );
}

/** What `importFile` would put into the book, or into one that is not there yet. Stores nothing. */
export async function previewImport(book: Book | null, file: FileToImport): Promise<Result<ImportReport>> {
  const { reading, hash } = await longWork.run('readFile', sourceOf(file));
  if (!reading.ok || hash === null) return refusedReading(reading);
  const drafted = await draftedPulls(book, file, reading, hash);
  if (!drafted.ok) return drafted;
  const again = book === null ? null : await takenBack(book, hash);
  const { pulls, findings, remarks } = await report(book, drafted.value.pulls, [
    ...(again ? [wouldBeInAgain(again)] : []),
    ...(book === null ? [] : await baselineLeaving(book, drafted.value.details.combinationId)),
    ...drafted.remarks,
  ]);
  // A pull that is not in the book has no id yet, so nothing can be said about it by one.
  const nameOf = new Map<string, string>(drafted.value.pulls.map(({ id, name }) => [`pull ${id}`, name]));
  const without = findings.map(({ subject, remark: said, ...one }) => ({
    ...one,
    subject: 'pull',
    remark: nameOf.size > 1 ? remarkAbout(nameOf.get(subject)!, said) : said,
  }));
  return accepted({
    pulls: pulls.map((pull) => ({ ...pull, id: '' })),
    findings: without,
    remarks,
    alreadyKnown: false,
  });
}

interface Drafted {
  reading: FileReading;
  mapping: ColumnMapping[];
  /** Said, else as the pull it is like, else as said of its kind of file. */
  details: PullDetails;
  pulls: Pull[];
}

async function draftedPulls(
  book: Book | null,
  file: FileToImport,
  reading: Result<FileReading> & { ok: true },
  hash: string,
): Promise<Result<Drafted>> {
  const looked = file.mapping !== undefined;
  const kind = book === null || looked || file.readAnew ? null : await knownKind(book, reading.value);
  const mapping = mappingOf(reading.value, file, kind);
  if (!mapping.ok) return mapping;
  const told = await detailsOf(book, file, kind);
  if (!told.ok) return told;
  const { drafts, reading: read } = await longWork.run(
    'draftPulls',
    { reading: reading.value, mapping: mapping.value },
    { giveAway: true },
  );
  if (!drafts.ok) return drafts;
  const isNumbered = book !== null && file.like !== undefined && drafts.value.length === 1;
  const details = isNumbered ? await numbered(book, told.value) : told.value;
  const pulls = drafts.value.map((draft) => pullFromDraft(draft, details, hash, drafts.value.length > 1));
  const [trouble, ...others] = details.treatment
    ? treatmentTrouble({ ...pulls[0]!, channels: null }, details.treatment)
    : [];
  if (trouble) return refused(trouble, ...others);
  const remarks = withoutTwins([
    ...(looked ? [] : kindRemarks(read, kind)),
    ...told.remarks,
    ...read.remarks,
    ...(looked || kind !== null ? [] : openQuestions(read, mapping.value)),
    ...drafts.remarks,
    ...drafts.value.flatMap((draft) => draft.remarks),
  ]);
  return accepted({ reading: read, mapping: mapping.value, details, pulls }, remarks);
}

/** Questions about columns that are still taken as guessed. */
function openQuestions({ columns, questions }: FileReading, mapping: readonly ColumnMapping[]): Remark[] {
  return questions.filter(({ column = 0 }) => {
    const guess = columns[column - 1]?.guess;
    const said = mapping.find(({ index }) => index === column - 1);
    return !guess || !said || (said.meaning === guess.meaning && said.unit === guess.unit);
  });
}

/** Columns as confirmed, else as remembered, else as guessed; what was remembered and does not fit is asked again. */
function mappingOf(
  reading: FileReading,
  file: FileToImport,
  kind: KnownKind | null,
): Result<ColumnMapping[]> {
  const columns = file.columns ?? [];
  const doubted = kind !== null && kind.conflicts.length > 0;
  if (doubted && columns.length === 0) return refused({ ...doubt(kind), level: 'refusal' });
  const remembered = doubted ? undefined : kind?.mapping;
  return mappingByNames(reading, file.mapping ?? remembered ?? guessedMapping(reading), columns);
}

async function detailsOf(
  book: Book | null,
  file: FileToImport,
  kind: KnownKind | null,
): Promise<Result<PullDetails>> {
  const said = file.details ?? {};
  if (book === null) return accepted(said);
  const combination = await withCombination(book, said);
  if (!combination.ok) return combination;
  const like = await withLike(book, combination.value, file.like, new Date().toISOString());
  if (!like.ok) return like;
  const placed = await withShopCell(book, withSaidOfKind(like.value, kind));
  return placed.ok ? accepted(placed.value, [...like.remarks, ...placed.remarks]) : placed;
}

/** Details with the next number of its day for a name, where it was given none. */
async function numbered(book: Book, details: PullDetails): Promise<PullDetails> {
  if (details.name !== undefined) return details;
  const day = details.recordedAt ?? new Date().toISOString();
  return { ...details, name: await nextPullName(book, day, details.cell ?? null) };
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

/** The pulls go over to the work and are not there afterwards. */
async function report(book: Book | null, pulls: Pull[], readingRemarks: Remark[]): Promise<ImportReport> {
  const rules = await rulesFor(book, pulls);
  const found = await longWork.run('figuresOfPulls', { pulls, rules }, { giveAway: true });
  return {
    pulls: found.map(({ id, figures }) => ({ id, ...figures })),
    findings: found.flatMap(({ findings }) => findings),
    remarks: withoutTwins([...readingRemarks, ...found.flatMap((one) => one.remarks)]),
    alreadyKnown: false,
  };
}

/** The pulls of a file are of one combination. */
async function rulesFor(book: Book | null, pulls: readonly Pull[]): Promise<RuleContext> {
  if (book === null) return { sheet: null };
  const id = pulls[0]?.combinationId ?? null;
  const combination = id === null ? null : await book.combination(id);
  return { sheet: combination?.sheet ?? null, thresholds: (await settingsOf(book)).ruleThresholds };
}

/** Only what the job needs: details and mapping stay here. */
const sourceOf = (file: FileToImport) =>
  file.bytes ? { name: file.name, bytes: file.bytes } : { name: file.name, path: file.path };

function refusedReading(reading: SourceRead['reading']): Result<never> {
  if (reading.ok) throw new Error('a file was accepted without its hash');
  return reading;
}

async function knownPulls(book: Book, hash: string, name: string): Promise<ImportReport | null> {
  const ids = await book.pullIdsOfFile(hash);
  if (ids.length === 0) return null;
  const { pulls, findings, remarks } = await report(book, await book.pulls(ids), []);
  const note = remark(
    'note',
    'file-already-known',
    `${name} is in the book already, byte for byte: nothing was added, and what the book says of its pulls stays as it is.`,
  );
  return { pulls, findings, remarks: [note, ...remarks], alreadyKnown: true };
}

function withoutTwins(remarks: Remark[]): Remark[] {
  const key = (one: Remark): string => [one.code, one.line, one.column, one.message].join('\n');
  return [...new Map(remarks.map((one) => [key(one), one])).values()];
}

const isExists = (trouble: unknown): boolean => trouble instanceof BookTrouble && trouble.code === 'exists';
