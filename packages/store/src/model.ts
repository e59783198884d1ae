import type { Combination, CombinationSheet, Engine, Package } from '@pullbook/core/combination';
import type { OriginalFile, Pull, Session, SetUp } from '@pullbook/core/pull';
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
  id: number;
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

/** Everything in a book but the original bytes; the shape of the JSON export. */
export interface BookContents {
  info: BookInfo;
  engines: Engine[];
  combinations: Combination[];
  packages: Package[];
  setUps: SetUp[];
  sessions: Session[];
  pulls: Pull[];
  files: OriginalFile[];
  trials: Trial[];
  log: LogEntry[];
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
  >
>;

/**
 * The book: a folder with `book.sqlite` and `originals/`. Every method that writes is one transaction: after it
 * returns the record is on the disk whole; killed before, it never was. Methods throw `BookTrouble` for what a person
 * can mend (locked, full, read-only, damaged) and `Error` for broken assumptions.
 */
export interface Book {
  readonly folder: string;
  info(): Promise<BookInfo>;
  close(): Promise<void>;

  engines(): Promise<Engine[]>;
  addEngine(engine: Engine): Promise<void>;
  combinations(): Promise<Combination[]>;
  combination(id: string): Promise<Combination | null>;
  addCombination(combination: Combination): Promise<void>;
  /** Better knowledge of the same hardware: revision goes up, the log holds both sides. */
  amendCombination(id: string, sheet: CombinationSheet, reason: string): Promise<Combination>;
  packages(): Promise<Package[]>;
  addPackage(item: Package): Promise<void>;
  setUps(): Promise<SetUp[]>;
  addSetUp(setUp: SetUp): Promise<void>;
  sessions(): Promise<Session[]>;
  addSession(session: Session): Promise<void>;

  /** All pulls without their channels, newest first. */
  pullHeads(): Promise<Omit<Pull, 'channels'>[]>;
  pull(id: string): Promise<Pull | null>;
  pulls(ids: string[]): Promise<Pull[]>;
  /** A file and its pulls: bytes written, flushed and renamed first, then all rows in one transaction. */
  addFileWithPulls(file: OriginalFile, bytes: Uint8Array, pulls: Pull[]): Promise<void>;
  /** Pulls without a file (summaries, entered by hand). */
  addPulls(pulls: Pull[]): Promise<void>;
  amendPull(id: string, amendment: PullAmendment, reason: string): Promise<Pull>;
  files(): Promise<OriginalFile[]>;
  file(hash: string): Promise<OriginalFile | null>;
  original(hash: string): Promise<Uint8Array>;
  pullIdsOfFile(hash: string): Promise<string[]>;

  trials(): Promise<Trial[]>;
  trial(id: string): Promise<Trial | null>;
  addTrial(trial: Trial): Promise<void>;
  changeTrial(trial: Trial, reason: string): Promise<void>;

  log(): Promise<LogEntry[]>;
  contents(): Promise<BookContents>;
}

/** Trouble with the book that a person can mend. `message` says what, where and what to do. */
export class BookTrouble extends Error {
  readonly code: 'locked' | 'full' | 'read-only' | 'damaged' | 'missing' | 'newer' | 'exists' | 'not a book';
  constructor(code: BookTrouble['code'], message: string) {
    super(message);
    this.name = 'BookTrouble';
    this.code = code;
  }
}
