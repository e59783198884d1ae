/** What the server sends besides the views' own types. Bare figures are shown as they come, never computed with. */
import type { CorrectionId } from '@pullbook/core/air';
import type { ChannelMeaning, Places, Tune } from '@pullbook/core/pull';
import type { Chip, ShownRemark } from '@pullbook/views';

export interface BookSummary {
  id: string;
  name: string;
  invented: boolean;
  counts: { trials: number; pulls: number; combinations: number; engines: number };
  version: string;
}

export interface CombinationRow {
  id: string;
  name: string;
  engineName: string;
  revision: number;
  pulls: number;
  chips: Chip[];
}

export interface ReadFileReport {
  fileName: string;
  hash: string;
  known: { pullIds: string[] } | null;
  layout: {
    encoding: string;
    delimiter: string;
    decimalMark: string;
    headerLine: number | null;
    unitLine: number | null;
    firstDataLine: number;
  };
  rowCount: number;
  groups: { name: string; rows: number }[];
  columns: ReadColumnReport[];
  /** As guessed, to be confirmed. */
  mapping: ColumnMapping[];
  preview: string[][];
  remarks: ShownRemark[];
  meanings: { id: ChannelMeaning; label: string; units: string[] }[];
}

export interface ReadColumnReport {
  index: number;
  name: string;
  unitText: string;
  count: number;
  missing: number;
  low: number | null;
  high: number | null;
  guess: { meaning: ChannelMeaning; unit: string; basis: string; why: string };
}

export interface ColumnMapping {
  index: number;
  /** `null`: left out. */
  meaning: ChannelMeaning | null;
  unit: string;
}

/** Weather as text with units: `98.2 kPa`, `30 C`, `45 %`. */
export interface WeatherText {
  pressure: string;
  temperature: string;
  humidity: string | null;
  altitude: string | null;
}

export interface Carried {
  standard: CorrectionId | 'not stated' | 'unknown';
  factor: number | null;
}

/** What else is written down about a pull, text with units; missing: not said. */
export interface MoreOfPull {
  operator?: string;
  momentOfInertia?: string;
  inertiaCompensated?: 'yes' | 'no' | 'unknown';
  tune?: Tune;
  places?: Places;
  /** One note, taken down now. */
  notes?: string;
  outcome?: 'completed' | 'aborted';
  /** Added to those that stand. */
  events?: { engineSpeed: string | null; text: string }[];
}

export interface ImportDetails extends MoreOfPull {
  mapping: ColumnMapping[];
  name?: string;
  combinationId: string | null;
  setUp?: string;
  cell?: string;
  recordedAt?: string;
  weather: WeatherText | null;
  carried: Carried;
}

export interface ImportReport {
  pulls: { id: string; name: string }[];
  remarks: ShownRemark[];
  alreadyKnown: boolean;
}

export interface PackageRow {
  id: string;
  name: string;
  covers: string[];
}

export interface EngineRow {
  id: string;
  name: string;
  buildRevision: string;
}
