import type BetterSqlite3 from 'better-sqlite3';
import type { Later, LogRow } from './log.ts';
import type { MergeConflict, MergeReport } from './model.ts';

/** Who the two books are. */
export interface MergeSides {
  ours: { id: string; name: string };
  theirs: { id: string; name: string; invented: boolean };
  /** ISO 8601 */
  at: string;
}

/** An entry that this merge writes into the log of ours beside those of theirs. */
export interface OwnEntry extends Pick<LogRow, 'act' | 'subject'> {
  before: unknown;
  after: unknown;
  /** Set where the entry stands for a conflict, which is told only when it is new. */
  conflict?: MergeConflict;
}

/** What a merge has found so far. The other book is attached to the database as `other`. */
export interface MergeState {
  database: BetterSqlite3.Database;
  sides: MergeSides;
  later: (subject: string) => Later;
  report: Omit<MergeReport, 'dryRun' | 'missingOriginals'>;
  entries: OwnEntry[];
  /** Pulls of theirs that ours has under another id. */
  pullHere: Map<string, string>;
  /** Pulls of theirs that did not come in. */
  dropped: Set<string>;
  /** Cells of theirs that have another name here, by their name in small letters. */
  cellNames: Map<string, string>;
  /** Likewise its compressor maps, which sheets name. */
  mapNames: Map<string, string>;
}
