import type { Combination, Engine, Package } from '@pullbook/core/combination';
import type { OriginalFile, Pull, Session, SetUp } from '@pullbook/core/pull';
import type { Trial } from '@pullbook/core/trial';

/** Everything in a book but the original bytes. The same fields as the store's contents, which this room must not import. */
export interface ExportedBook {
  info: { id: string; name: string; invented: boolean; createdAt: string; schemaVersion: number };
  engines: Engine[];
  combinations: Combination[];
  packages: Package[];
  setUps: SetUp[];
  sessions: Session[];
  pulls: Pull[];
  files: OriginalFile[];
  trials: Trial[];
  log: {
    id: number;
    at: string;
    act: string;
    subject: string;
    reason: string;
    before: unknown;
    after: unknown;
  }[];
}

/** Original bytes by their SHA-256 in hex. */
export type Originals = Map<string, { name: string; bytes: Uint8Array }>;

/** One file of the export; `path` with forward slashes, relative to the export's folder. */
export interface ExportFile {
  path: string;
  bytes: Uint8Array;
}
