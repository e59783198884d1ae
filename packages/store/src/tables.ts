import type { CompressorMap } from '@pullbook/core/airpath';
import type { Publication } from '@pullbook/core/publication';
import type { Channel, Pull } from '@pullbook/core/pull';
import type { Prediction } from '@pullbook/core/shop';
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
  audience: Json;
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
  audience: Json;
  plan: Json;
  runningOrder: Json;
}

interface TrialCombinationTable {
  trialId: string;
  place: number;
  key: string;
  combinationId: string;
  shortName: string;
  takenApart: Truth | null;
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
  /** Global name: the book in which it was written, and its number there. */
  uid: string;
  /** `uid` of the entry it undoes. */
  undoes: string | null;
  /** `uid` of the first entry of what was done in one step. */
  together: string;
  at: string;
  act: string;
  subject: string;
  reason: string;
  before: Json;
  after: Json;
}

interface CellTable extends Sequenced {
  id: string;
  name: string;
  brake: string;
  altitude: number | null;
  momentOfInertia: number | null;
  instruments: Json;
  notes: string;
}

interface LayoutTable extends Sequenced {
  fingerprint: string;
  name: string;
  columns: Json;
  said: Json;
  confirmedAt: string;
}

interface SettingTable {
  name: string;
  value: Json;
}

interface SilencedTable extends Sequenced {
  id: string;
  what: Generated<'rule'>;
  ruleId: string;
  subject: string;
  reason: string;
  at: string;
}

interface PredictionTable extends Sequenced {
  id: string;
  trialId: string;
  key: string;
  what: Prediction['what'];
  value: number;
  low: number;
  high: number;
  basis: string;
  at: string;
  curve: Json;
  madeBy: Json;
}

export interface CompressorMapTable extends Sequenced {
  id: string;
  name: string;
  form: CompressorMap['form'];
  reference: Json;
  geometry: Json;
  points: Json;
  leftEnd: CompressorMap['leftEnd'];
  origin: CompressorMap['origin'];
  notes: string;
  invented: Truth;
  createdAt: string;
}

export interface PublicationTable extends Sequenced {
  id: string;
  trialId: string;
  question: string;
  sentence: string;
  kinds: Json;
  files: Json;
  pullIds: Json;
  correction: Publication['correction'];
  figures: Json;
  privateToo: Truth;
  links: Json;
  at: string;
}

export interface EnquiryTable extends Sequenced {
  id: string;
  question: string;
  combinationId: string;
  asked: Json;
  answer: Json;
  pullIds: Json;
  madeBy: Json;
  became: Json;
  cards: Json;
  at: string;
}

interface WithdrawnTable {
  kind: string;
  id: string;
  at: string;
}

/** What a list shows of a pull, remembered; made anew wherever `key` is not what it rests on today. */
interface ListedTable {
  pullId: string;
  key: string;
  words: string;
  figures: Json;
  peakPower: number | null;
  peakTorque: number | null;
  /** Whether its combination has a supercharger; `null`: no combination. */
  boosted: Truth | null;
  digest: Uint8Array | null;
  runAs: string | null;
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
  cell: CellTable;
  layout: LayoutTable;
  setting: SettingTable;
  silenced: SilencedTable;
  prediction: PredictionTable;
  compressorMap: CompressorMapTable;
  publication: PublicationTable;
  enquiry: EnquiryTable;
  withdrawn: WithdrawnTable;
  listed: ListedTable;
}
