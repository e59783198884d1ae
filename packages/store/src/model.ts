import type { CompressorMap } from '@pullbook/core/airpath';
import type { Combination, CombinationSheet, Engine, Package } from '@pullbook/core/combination';
import type { Publication, PublicationLink } from '@pullbook/core/publication';
import type { Cell, Channel, OriginalFile, Pull, Session, SetUp } from '@pullbook/core/pull';
import type { Enquiry } from '@pullbook/core/reach';
import type { Silenced } from '@pullbook/core/rule';
import type { Prediction } from '@pullbook/core/shop';
import type { Trial } from '@pullbook/core/trial';

export interface BookInfo {
  id: string;
  name: string;
  invented: boolean;
  /** ISO 8601 */
  createdAt: string;
  /** Number of the last migration. */
  schemaVersion: number;
}

/** One entry of the log: who did what when; an amendment holds both sides. */
export interface LogEntry {
  /** Order in this book. */
  id: number;
  /** Global name: id of the book in which it was written, and its number there. */
  uid: string;
  /** `uid` of the entry that this one undoes; `null`: none. */
  undoes: string | null;
  /** `uid` of the first entry of what was done in one step (a file with its pulls); its own where it was done alone. */
  together: string;
  /** ISO 8601 */
  at: string;
  /** `pull added`, `combination amended`, … */
  act: string;
  /** Kind and id of what it was done to. */
  subject: string;
  reason: string;
  before: unknown;
  after: unknown;
}

/** A layout of files met before: what a person confirmed of it, so that the next file of that kind asks nothing. */
export interface KnownLayout {
  /** From the formats room: the same for files laid out alike. */
  fingerprint: string;
  /** Name of the file it was confirmed with. */
  name: string;
  /** Confirmed meaning of each column, JSON of the formats room. */
  columns: unknown;
  /** What was said beside it that holds for the next file too (standard carried, cell, places), JSON of the workshop. */
  said: unknown;
  /** ISO 8601 */
  confirmedAt: string;
}

/** Settings by name, JSON values. */
export type StoredSettings = Record<string, unknown>;

/** Things whose addition can be undone. */
export type WithdrawnKind =
  | 'pull'
  | 'trial'
  | 'combination'
  | 'package'
  | 'engine'
  | 'cell'
  | 'file'
  | 'prediction'
  | 'compressorMap'
  | 'publication'
  | 'enquiry';

/** Things that are asked for by an id, its beginning, or a name. A trial's and an enquiry's is its question. */
export type NamedKind =
  | 'pull'
  | 'trial'
  | 'combination'
  | 'package'
  | 'engine'
  | 'cell'
  | 'compressorMap'
  | 'enquiry';

/** An addition that was undone: the thing is hidden from every list and answer, and can be brought back. */
export interface Withdrawn {
  kind: WithdrawnKind;
  id: string;
  /** ISO 8601 */
  at: string;
}

/** Everything in a book but channels and original bytes, which are large; the shape of the JSON export. */
export interface BookOutline {
  info: BookInfo;
  engines: Engine[];
  combinations: Combination[];
  packages: Package[];
  setUps: SetUp[];
  sessions: Session[];
  pulls: Omit<Pull, 'channels'>[];
  files: OriginalFile[];
  trials: Trial[];
  cells: Cell[];
  layouts: KnownLayout[];
  silenced: Silenced[];
  predictions: Prediction[];
  compressorMaps: CompressorMap[];
  publications: Publication[];
  enquiries: Enquiry[];
  settings: StoredSettings;
  withdrawn: Withdrawn[];
  log: LogEntry[];
}

/** Everything in a book but the original bytes. */
export interface BookContents extends Omit<BookOutline, 'pulls'> {
  pulls: Pull[];
}

/** What may be amended of a pull: what was written down about it. Its channels never. */
export type PullAmendment = Partial<
  Pick<
    Pull,
    | 'name'
    | 'combinationId'
    | 'setUpId'
    | 'sessionId'
    | 'orderInSession'
    | 'recordedAt'
    | 'cell'
    | 'operator'
    | 'weather'
    | 'carried'
    | 'sweep'
    | 'tune'
    | 'places'
    | 'notes'
    | 'events'
    | 'outcome'
    | 'treatment'
    | 'audience'
  >
>;

/** A pull without its channels. */
export type PullHead = Omit<Pull, 'channels'>;

/** What a list shows of a pull and finds it by, remembered; `key`: what it was made by. */
export interface ListedPull {
  pullId: string;
  key: string;
  /** Lower case, all that it can be found by. */
  words: string;
  /** JSON of the workshop. */
  figures: unknown;
  /** W; `null`: unknown */
  peakPower: number | null;
  /** N·m; `null`: unknown */
  peakTorque: number | null;
  /** `null`: its combination is not known. */
  boosted: boolean | null;
  /** `null`: it has no curve of power. */
  digest: ListedDigest | null;
}

/** The few numbers of a pull that the shop's figures need. */
export interface ListedDigest {
  /** As the workshop lays them out; NaN: none. */
  values: Float64Array;
  /** What it was run and read as: pulls of another text are no repeats of it. */
  runAs: string;
}

/** A pull for the shop's figures: the few numbers a list remembers of it, and what they are grouped by. */
export interface DigestRow
  extends Pick<
    PullHead,
    | 'combinationId'
    | 'setUpId'
    | 'sessionId'
    | 'orderInSession'
    | 'recordedAt'
    | 'cell'
    | 'outcome'
    | 'origin'
    | 'invented'
  > {
  pullId: string;
  engineId: string | null;
  /** Whether anything is remembered of it under the key. */
  isListed: boolean;
  /** `null`: not remembered, or it has no curve. */
  digest: ListedDigest | null;
  /** A trial holds it as rejected or as a warm-up. */
  isSetAside: boolean;
}

/** Which pulls of the book; each missing field lets all pass, and all given must hold. */
export interface PullQuery {
  /** Every one must be somewhere in the pull's words; lower case. */
  words?: readonly string[];
  ids?: readonly string[];
  combinationIds?: readonly string[];
  /** Without a combination. */
  withoutCombination?: boolean;
  engineId?: string;
  cell?: string;
  /** ISO 8601 dates, both included, of the day in the cell. */
  fromDay?: string;
  toDay?: string;
  /** Peak power as listed, W. */
  powerFrom?: number;
  powerTo?: number;
  boosted?: boolean | 'unknown';
  outcome?: Pull['outcome'];
  inTrial?: boolean;
  invented?: boolean;
  /** `newest`: added last. Those without the figure come last. */
  sort: 'newest' | 'power' | 'name';
  /** Rows passed over, and rows given. */
  offset: number;
  limit: number;
}

export interface FoundPulls {
  pulls: { head: PullHead; listed: ListedPull | null }[];
  /** How many fit. */
  total: number;
  /** How many the book has. */
  all: number;
}

export interface BookCounts {
  engines: number;
  combinations: number;
  pulls: number;
  trials: number;
  files: number;
  enquiries: number;
}

export interface LogQuery {
  /** `pull <id>`: only about this. */
  subject?: string;
  /** Only entries of a lower number. */
  before?: number;
  limit: number;
}

export interface LogPage {
  entries: LogEntry[];
  /** Of these entries, `uid` of those that are undone now. */
  undone: Set<string>;
  /** Give it as `before` for the next page; `null`: there is none. */
  next: number | null;
}

/**
 * The book: a folder with `book.sqlite` and `originals/`. Every method that writes is one transaction: after it
 * returns the record is on the disk whole; killed before, it never was. Methods throw `BookTrouble` for what a person
 * can mend (locked, full, read-only, damaged) and `Error` for broken assumptions.
 */
export interface Book {
  readonly folder: string;
  /** How far the machine's clock stood behind the newest entry of the log when the book was opened, ms; 0: not behind. */
  readonly clockBehindMs: number;
  info(): Promise<BookInfo>;
  close(): Promise<void>;

  engines(): Promise<Engine[]>;
  addEngine(engine: Engine): Promise<void>;
  /** Another name, build revision or note of the same engine. */
  changeEngine(engine: Engine, reason: string, stamp?: string): Promise<void>;
  combinations(): Promise<Combination[]>;
  combination(id: string): Promise<Combination | null>;
  /** Id, name and engine of every combination, the one added last first, without their sheets. */
  combinationNames(): Promise<{ id: string; name: string; engineId: string }[]>;
  /** With the engine it is built on, where that is new: one step, undone at once. */
  addCombination(combination: Combination, newEngine?: Engine): Promise<void>;
  /** Better knowledge of the same hardware: revision goes up, the log holds both sides. */
  amendCombination(id: string, sheet: CombinationSheet, reason: string, stamp?: string): Promise<Combination>;
  packages(): Promise<Package[]>;
  addPackage(item: Package): Promise<void>;
  /** In the order in which they came. */
  compressorMaps(): Promise<CompressorMap[]>;
  compressorMap(id: string): Promise<CompressorMap | null>;
  addCompressorMap(map: CompressorMap): Promise<void>;
  /** Better knowledge of the same compressor. Under another name, sheets go on saying the old one: a sheet is amended by hand. */
  changeCompressorMap(map: CompressorMap, reason: string, stamp?: string): Promise<void>;
  setUps(): Promise<SetUp[]>;
  addSetUp(setUp: SetUp): Promise<void>;
  sessions(): Promise<Session[]>;
  addSession(session: Session): Promise<void>;

  /** All pulls without their channels, the one added last first. For what needs the whole book; lists use `findPulls`. */
  pullHeads(): Promise<PullHead[]>;
  /** Heads of those ids, in the order asked; ids that are not in the book are left out. */
  pullHeadsOf(ids: readonly string[]): Promise<PullHead[]>;
  /** Heads of the pulls of these combinations, the one added last first. */
  pullHeadsWith(combinationIds: readonly string[]): Promise<PullHead[]>;
  /** Id and name of every pull, the one added last first. */
  pullNames(): Promise<{ id: string; name: string }[]>;
  /** How many pulls each combination has; one without any is not named. */
  pullCounts(): Promise<Map<string, number>>;
  /** Cells that pulls name, in the order of the alphabet, with how many do. */
  pullCells(): Promise<{ name: string; pulls: number }[]>;
  /** Names of the pulls of a day (ISO 8601 date) in a cell: as recorded, else as added. `cell: null`: any. */
  pullNamesOfDay(day: string, cell: string | null): Promise<string[]>;
  /** The pull added last; `null`: there is none. */
  newestPull(): Promise<PullHead | null>;
  /** One page of the pulls that fit, from what a list remembers of them. */
  findPulls(query: PullQuery): Promise<FoundPulls>;
  /** Ids of pulls of which the list remembers nothing under this key, the one added last first; as of which log entry. */
  unlisted(key: string, most: number): Promise<{ ids: string[]; asOf: number }>;
  /**
   * Remembers what a list shows. Not logged: it can be made anew at any time. `false`: something was written since `asOf`,
   * so that it may be out of date already; nothing was kept.
   */
  keepListed(listed: readonly ListedPull[], asOf: number): Promise<boolean>;
  /** What is remembered under this key of every pull for the shop's figures, the one added first first. */
  digests(key: string): Promise<DigestRow[]>;
  /** The last entry of the log that can have changed them. */
  digestsAsOf(): Promise<number>;
  pull(id: string): Promise<Pull | null>;
  pulls(ids: string[]): Promise<Pull[]>;
  /** A file and its pulls: bytes written, flushed and renamed first, then all rows in one transaction. */
  addFileWithPulls(
    file: OriginalFile,
    original: Uint8Array | { path: string },
    pulls: Pull[],
    /** What was confirmed of its columns: kept in the same step. */
    layout?: KnownLayout,
  ): Promise<void>;
  /** Pulls without a file (summaries, entered by hand). */
  addPulls(pulls: Pull[]): Promise<void>;
  amendPull(id: string, amendment: PullAmendment, reason: string, stamp?: string): Promise<PullHead>;
  files(): Promise<OriginalFile[]>;
  file(hash: string): Promise<OriginalFile | null>;
  original(hash: string): Promise<Uint8Array>;
  pullIdsOfFile(hash: string): Promise<string[]>;

  trials(): Promise<Trial[]>;
  trialsOf(ids: readonly string[]): Promise<Trial[]>;
  /** Id and question of every trial, with its words to find it by, the one added last first. */
  trialNames(): Promise<{ id: string; question: string; words: string }[]>;
  /** Ids of the trials in which any of these pulls stands. */
  trialIdsOfPulls(pullIds: readonly string[]): Promise<string[]>;
  trial(id: string): Promise<Trial | null>;
  addTrial(trial: Trial): Promise<void>;
  changeTrial(trial: Trial, reason: string, stamp?: string): Promise<void>;

  cells(): Promise<Cell[]>;
  addCell(cell: Cell): Promise<void>;
  /** Under another name, its pulls and sessions follow. */
  changeCell(cell: Cell, reason: string, stamp?: string): Promise<void>;
  layouts(): Promise<KnownLayout[]>;
  layout(fingerprint: string): Promise<KnownLayout | null>;
  keepLayout(layout: KnownLayout): Promise<void>;
  forgetLayout(fingerprint: string): Promise<void>;
  /** Rules silenced, for these subjects (`pull <id>`) or for all; the one added last first. */
  silenced(subjects?: readonly string[]): Promise<Silenced[]>;
  /** Silences a rule for a subject; once more replaces the reason. Gives it with its id, which follows from the two. */
  silence(silenced: Omit<Silenced, 'id'>): Promise<Silenced>;
  /** Lets a silenced rule speak again; nothing where it was not silenced. */
  letSpeak(id: string, reason: string): Promise<void>;
  /** Predictions of these trials, or of all; the one made last first. Never altered; withdrawn when its addition is undone. */
  predictions(trialIds?: readonly string[]): Promise<Prediction[]>;
  /** Several that were made of one thing are one step, undone at once. */
  addPrediction(prediction: Prediction, ...others: Prediction[]): Promise<void>;
  /** What left the shop of these trials, or of all; the last first. Never altered but for its links; withdrawn when its addition is undone. */
  publications(trialIds?: readonly string[]): Promise<Publication[]>;
  addPublication(publication: Publication): Promise<void>;
  /** Where a publication appeared: all of its links, as they are to be. */
  changeLinks(id: string, links: PublicationLink[], reason: string, stamp?: string): Promise<void>;
  /** Targets that were asked of these combinations, or of all; the last first. Withdrawn when their addition is undone. */
  enquiries(combinationIds?: readonly string[]): Promise<Enquiry[]>;
  enquiry(id: string): Promise<Enquiry | null>;
  /** Id, question and combination of every enquiry, with its words to find it by, the one added last first. */
  enquiryNames(): Promise<{ id: string; question: string; combinationId: string; words: string }[]>;
  addEnquiry(enquiry: Enquiry): Promise<void>;
  /** What became of its rungs and the cards that left, all of them as they are to be; the answer is never altered. */
  changeEnquiry(
    id: string,
    change: Partial<Pick<Enquiry, 'became' | 'cards'>>,
    reason: string,
    stamp?: string,
  ): Promise<void>;
  /** A rung that becomes a combination of a trial with what was foretold of it: one step, undone at once. Stamp of the enquiry. */
  addPlanned(
    planned: {
      /** `null`: the trial is of one that is there. */
      combination: Combination | null;
      trial: Trial;
      predictions: Prediction[];
      enquiryId: string;
      became: Enquiry['became'];
    },
    stamp?: string,
  ): Promise<void>;
  settings(): Promise<StoredSettings>;
  /** Keeps the named settings; `null` forgets one; the others stay. */
  changeSettings(change: StoredSettings, stamp?: string): Promise<void>;

  /**
   * Id and name of the things that a text can mean: by an id, the beginning of one (four characters or more) or a whole name,
   * in which capitals of A to Z are forgiven. The one added last first.
   */
  named(kind: NamedKind, given: string): Promise<{ id: string; name: string }[]>;
  /** How much is in the book, without what was withdrawn. */
  counts(): Promise<BookCounts>;
  /**
   * Global name of the last entry of the log about a subject (`pull <id>`, `settings`): what a reader has seen. Given back
   * with a change, the change is refused (`changed meanwhile`) where somebody else wrote since. '' where there is none.
   */
  stamp(subject: string): Promise<string>;
  /** Entries about a subject that came after the stamp, oldest first. */
  logSince(subject: string, stamp: string): Promise<LogEntry[]>;
  /** The whole log, oldest first. */
  log(): Promise<LogEntry[]>;
  /** What each subject is called, and whether it is in the book now; one that never was is not named. */
  subjects(subjects: readonly string[]): Promise<Map<string, { name: string; isThere: boolean }>>;
  /** A page of the log, newest first; what was done in one step is never torn apart. */
  logPage(query: LogQuery): Promise<LogPage>;
  /**
   * Takes back what was done: the entry of that `uid` with all that was done together with it, or the last act that was not
   * undone yet. What was changed is put back where nobody changed it since; what was added is withdrawn: hidden, never
   * deleted. It is an act of its own in the log and can be undone itself. Throws `BookTrouble`: `changed meanwhile`,
   * `in use`, `cannot be undone`.
   */
  undo(uid: string | null): Promise<LogEntry[]>;
  /** The channels of a pull, a withdrawn one too. */
  channels(pullId: string): Promise<Channel[]>;
  /** Everything but channels and original bytes, withdrawn things too. */
  outline(): Promise<BookOutline>;
  contents(): Promise<BookContents>;
}

/** Trouble with the book that a person can mend. `message` says what, where and what to do. */
export class BookTrouble extends Error {
  readonly code:
    | 'changed meanwhile'
    | 'in use'
    | 'cannot be undone'
    | 'locked'
    | 'full'
    | 'read-only'
    | 'damaged'
    | 'missing'
    | 'newer'
    | 'exists'
    | 'not a book';
  /** What was written since, oldest first, where that stands in the way. */
  readonly since: readonly LogEntry[];
  constructor(code: BookTrouble['code'], message: string, since: readonly LogEntry[] = []) {
    super(message);
    this.name = 'BookTrouble';
    this.code = code;
    this.since = since;
  }
}
