import type { Channel, Pull } from '@pullbook/core/pull';
import type { Trial, TrialPull } from '@pullbook/core/trial';
import type { Generated } from 'kysely';

/** JSON text of a nested thing; `null` inside is `'null'`. */
type Json = string;
/** 0 or 1: SQLite has no truth values. */
type Truth = number;

interface Sequenced {
  sequence: Generated<number>;
}

interface BookTable {
  id: string;
  name: string;
  invented: Truth;
  createdAt: string;
}

interface EngineTable extends Sequenced {
  id: string;
  name: string;
  buildRevision: string;
  notes: string;
  invented: Truth;
}

interface PackageTable extends Sequenced {
  id: string;
  name: string;
  covers: Json;
  invented: Truth;
}

interface CombinationTable extends Sequenced {
  id: string;
  engineId: string;
  name: string;
  sheet: Json;
  revision: number;
  madeFromId: string | null;
  createdAt: string;
  invented: Truth;
}

interface CombinationPackageTable {
  combinationId: string;
  place: number;
  packageId: string;
}

interface SetUpTable extends Sequenced {
  id: string;
  combinationId: string;
  fittedAt: string;
  notes: string;
}

interface SessionTable extends Sequenced {
  id: string;
  name: string;
  cell: string;
  day: string;
  notes: string;
}

interface FileTable extends Sequenced {
  hash: string;
  name: string;
  byteLength: number;
  addedAt: string;
  mapping: Json;
}

export interface PullTable extends Sequenced {
  id: string;
  name: string;
  combinationId: string | null;
  setUpId: string | null;
  sessionId: string | null;
  orderInSession: number | null;
  recordedAt: string | null;
  cell: string | null;
  operator: string | null;
  form: Pull['form'];
  summary: Json;
  weather: Json;
  carried: Json;
  sweep: Json;
  tune: Json;
  places: Json;
  notes: Json;
  events: Json;
  outcome: Pull['outcome'];
  treatment: Json;
  origin: Pull['origin'];
  fileHash: string | null;
  invented: Truth;
  channelsHash: string;
}

interface ChannelTable {
  pullId: string;
  place: number;
  meaning: Channel['meaning'];
  name: string;
  unit: string;
  kind: Channel['kind'];
  origin: Channel['origin'];
  count: number;
  /** Float64, little-endian. */
  samples: Buffer;
}

export interface TrialTable extends Sequenced {
  id: string;
  question: string;
  kind: Trial['kind'];
  correction: Trial['correction'];
  averagesWindowRpm: Json;
  remark: string;
  createdAt: string;
  invented: Truth;
}

interface TrialCombinationTable {
  trialId: string;
  place: number;
  key: string;
  combinationId: string;
  shortName: string;
}

interface TrialPullTable {
  trialId: string;
  place: number;
  pullId: string;
  key: string;
  role: TrialPull['role'];
  reason: string | null;
}

interface LogTable {
  id: Generated<number>;
  at: string;
  act: string;
  subject: string;
  reason: string;
  before: Json;
  after: Json;
}

/** The tables as `migrations` leave them. */
export interface Tables {
  book: BookTable;
  engine: EngineTable;
  package: PackageTable;
  combination: CombinationTable;
  combinationPackage: CombinationPackageTable;
  setUp: SetUpTable;
  session: SessionTable;
  file: FileTable;
  pull: PullTable;
  channel: ChannelTable;
  trial: TrialTable;
  trialCombination: TrialCombinationTable;
  trialPull: TrialPullTable;
  log: LogTable;
}
