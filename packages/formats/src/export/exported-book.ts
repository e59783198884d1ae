import type { CompressorMap } from '@pullbook/core/airpath';
import type { Combination, Engine, Package } from '@pullbook/core/combination';
import type { Publication } from '@pullbook/core/publication';
import type { Cell, Channel, OriginalFile, Pull, Session, SetUp } from '@pullbook/core/pull';
import type { Enquiry } from '@pullbook/core/reach';
import type { Silenced } from '@pullbook/core/rule';
import type { Prediction } from '@pullbook/core/shop';
import type { Trial } from '@pullbook/core/trial';

/** A pull without its channels. */
export type ExportedHead = Omit<Pull, 'channels'>;

/**
 * Everything in a book but channels and original bytes. The same fields as the store's contents, which this room must
 * not import.
 */
export interface ExportedBook {
  info: { id: string; name: string; invented: boolean; createdAt: string; schemaVersion: number };
  engines: Engine[];
  combinations: Combination[];
  packages: Package[];
  setUps: SetUp[];
  sessions: Session[];
  pulls: ExportedHead[];
  files: OriginalFile[];
  trials: Trial[];
  cells: Cell[];
  layouts: { fingerprint: string; name: string; columns: unknown; said: unknown; confirmedAt: string }[];
  silenced: Silenced[];
  predictions: Prediction[];
  compressorMaps: CompressorMap[];
  publications: Publication[];
  enquiries: Enquiry[];
  settings: Record<string, unknown>;
  withdrawn: {
    kind:
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
    id: string;
    at: string;
  }[];
  log: {
    id: number;
    uid: string;
    undoes: string | null;
    together: string;
    at: string;
    act: string;
    subject: string;
    reason: string;
    before: unknown;
    after: unknown;
  }[];
}

/** What is large in a book, asked for one at a time, so that no book is too large to be exported. */
export interface ExportSource {
  channelsOf: (pullId: string) => Promise<Channel[]>;
  originalOf: (hash: string) => Promise<Uint8Array>;
}

/** One file of the export; `path` with forward slashes, relative to the export's folder. */
export interface ExportFile {
  path: string;
  bytes: Uint8Array;
}
