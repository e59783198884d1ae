/** Two books say different things of one thing, and neither knew what the other said. Ours stands. */
export interface MergeConflict {
  kind: string;
  id: string;
  name: string;
  /**
   * Why both can be: `both changed it`, that both books had imported the same file, or that the other is a part of a book
   * without its log (a bundle), so that nothing tells which of the two states is later.
   */
  why: 'both changed it' | 'same file in both' | 'no log tells which is later';
  fields: { field: string; ours: unknown; theirs: unknown }[];
}

export interface MergeReport {
  /** The book that was merged in. */
  other: { id: string; name: string; invented: boolean };
  /** Nothing was written: what would have been. */
  dryRun: boolean;
  /** How many came in, by kind; kinds of which none came are left out. */
  added: Record<string, number>;
  /** Things of ours that the other book knew better: it had seen our state and changed it. */
  taken: { kind: string; id: string; name: string }[];
  /** What the other said of these is kept in the log. */
  conflicts: MergeConflict[];
  /** Came in under another name, since ours had the name already. */
  renamed: { kind: string; id: string; from: string; to: string }[];
  /** Pulls of the other that ours has too, from the same bytes: trials of the other refer to ours now. */
  samePulls: { theirs: string; ours: string; name: string }[];
  /** Originals that the other book does not have whole; what was read from them came in. */
  missingOriginals: { hash: string; name: string }[];
  /** Pulls of the other whose channels are damaged there: they did not come in. */
  damaged: { id: string; name: string }[];
  /** Entries of the other's log that came in. */
  logEntries: number;
}

/** Whether a merge brought, or would bring, anything. */
export function bringsSomething({ added, taken, conflicts, logEntries }: MergeReport): boolean {
  return Object.keys(added).length + taken.length + conflicts.length + logEntries > 0;
}
