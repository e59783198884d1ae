import type { AirReading, CorrectionId } from '../air/index.ts';
import type { Origin, QuantityKind } from '../quantity/index.ts';
import type { Remark, SaidParts } from '../remark/index.ts';

/** What a channel says. A closed list: `other` keeps what is not understood, with its name and unit. */
export type ChannelMeaning =
  | 'time'
  | 'engineSpeed'
  | 'torque'
  | 'power'
  | 'boost' // gauge pressure in the manifold
  | 'manifoldPressure' // absolute
  | 'dischargePressure' // gauge, at the compressor
  | 'lambda'
  | 'airFuelRatio'
  | 'fuelFlow'
  | 'fuelVolumeFlow' // without its density no mass
  | 'airFlow'
  | 'airVolumeFlow' // as the meter reads it; without its air no mass
  | 'inletAirTemperature'
  | 'dischargeTemperature'
  | 'chargeTemperature' // in the manifold
  | 'oilTemperature'
  | 'coolantTemperature'
  | 'fuelTemperature'
  | 'exhaustTemperature'
  | 'oilPressure'
  | 'fuelPressure'
  | 'crankcasePressure'
  | 'sparkAdvance'
  | 'throttle'
  | 'impellerSpeed'
  | 'barometer'
  | 'relativeHumidity'
  | 'correctionFactor'
  | 'batteryVoltage'
  | 'other';

export interface Channel {
  meaning: ChannelMeaning;
  /** Name as the file has it. */
  name: string;
  /** Unit as read, a spelling of `quantity`'s table or the file's own for `other`; '' where none. */
  unit: string;
  kind: QuantityKind;
  /** One value a row, in the inside unit of `kind`; NaN where missing. All channels of a pull have one length. */
  values: Float64Array;
  origin: Origin;
}

/** Whether torque and power of a pull were corrected before we got them. */
export interface CarriedCorrection {
  /** `not stated`: nothing is known; taken as observed and said so. `unknown`: corrected, by what is not known. */
  standard: CorrectionId | 'not stated' | 'unknown';
  /** Factor already inside the figures; 1 for observed; `null` where unknown: the pull is then never converted. */
  factor: number | null;
}

/** How the engine's speed was swept, and what is known of inertia. */
export interface SweepSettings {
  /** Moment of inertia of all that turns at engine speed, kg·m²; `null` unknown. */
  momentOfInertia: number | null;
  /** Whether the figures already have the inertia torque added back. */
  inertiaCompensated: 'yes' | 'no' | 'unknown';
}

/** What can be altered without a spanner on the engine. Text with units as entered; missing: not noted. */
export interface Tune {
  sparkAdvance?: string;
  targetLambda?: string;
  jets?: string;
  fuelPressure?: string;
  /** What cools the charge cooler, as it comes in: `14 °C`, `ice water, 3 °C`. */
  coolerWater?: string;
  /** Drum or delivery the fuel came from: `drum 4, opened 2 March`. */
  fuelBatch?: string;
  notes?: string;
}

/** Where probes and taps sit. Two pulls with different places are not alike in that channel. */
export interface Places {
  boostTap?: string;
  chargeProbe?: string;
  inletProbe?: string;
}

export interface PullNote {
  /** ISO 8601 with offset. */
  at: string;
  text: string;
}

/** Something that happened in the pull: knock, misfire, leak, abort. */
export interface PullEvent {
  /** r/min; `null`: not tied to a speed */
  engineSpeedRpm: number | null;
  text: string;
}

/** Peaks that were printed or remembered, for a pull without a curve. SI; `null` unknown. */
export interface PullSummary {
  peakPower: number | null;
  peakPowerRpm: number | null;
  peakTorque: number | null;
  peakTorqueRpm: number | null;
}

/**
 * How a person decided to read a pull: kept with it, amended with a reason, logged, and named wherever the pull is. It is
 * not measured data, and the channels are the same under any treatment.
 */
export interface Treatment {
  /** Seconds by which a channel is late, by meaning; negative: early; missing: 0. */
  lags: Partial<Record<ChannelMeaning, number>>;
  /** Hand-set accepted window, r/min; `null`: found. */
  windowRpm: [low: number, high: number] | null;
  /** r/min; `null`: adapted to the sampling. */
  binWidthRpm: number | null;
  /** Add the torque hidden by inertia, where it is known and not already inside. */
  addInertia: boolean;
}

/** Who may see a thing outside the book. Inside it everything is seen. */
export interface Audience {
  /** `shop`: never leaves it. `customer`: for whose engine it is. `everyone`: may be published. */
  who: 'shop' | 'customer' | 'everyone';
  /** ISO 8601 date before which it is not published (embargo); `null`: none. */
  notBefore: string | null;
}

/** One check or adjustment of an instrument against a reference. */
export interface Calibration {
  /** ISO 8601 date */
  day: string;
  /** ISO 8601 date to which it holds; `null`: nobody said. */
  validUntil: string | null;
  /** `six dead weights up and down, arm 0.75 m` */
  how: string;
  /** What it showed: `span +0.2 %, zero 0.4 N·m` */
  found: string;
  by: string;
}

/** An instrument of a cell. Calibration is of instruments only. */
export interface Instrument {
  id: string;
  name: string;
  /** What it measures; `weather`: pressure, temperature, humidity of the air. */
  measures: ChannelMeaning | 'weather';
  serial: string;
  calibrations: Calibration[];
}

/** A test cell. Pulls and sessions name it as it was written down; `name` is unique in a book but for capitals. */
export interface Cell {
  id: string;
  name: string;
  /** `water brake, 300 mm rotor` */
  brake: string;
  /** m above sea level; `null` unknown */
  altitude: number | null;
  /** Of brake and coupling, kg·m²; `null` unknown */
  momentOfInertia: number | null;
  instruments: Instrument[];
  notes: string;
}

/** One measured run. Channels are as read: nothing here is corrected, gridded or smoothed by us. */
export interface Pull {
  id: string;
  name: string;
  combinationId: string | null;
  setUpId: string | null;
  sessionId: string | null;
  /** Place in the order of its session, from 1; `null` unknown. */
  orderInSession: number | null;
  /** ISO 8601 with the logger's offset; `null` unknown. */
  recordedAt: string | null;
  cell: string | null;
  operator: string | null;
  form: 'curve' | 'summary';
  /** Empty for a summary. */
  channels: Channel[];
  summary: PullSummary | null;
  weather: AirReading | null;
  carried: CarriedCorrection;
  sweep: SweepSettings;
  tune: Tune;
  places: Places;
  notes: PullNote[];
  events: PullEvent[];
  /** `completed`, or aborted in the cell: kept, for drift and soak need it. */
  outcome: 'completed' | 'aborted';
  treatment: Treatment;
  audience: Audience;
  origin: Origin;
  /** SHA-256 of the original bytes, hex; `null` for a pull entered by hand. */
  fileHash: string | null;
  /** Labelled invented: the demo's. Shown wherever the pull is. */
  invented: boolean;
}

/**
 * How a pull is turned into curves. Everything a derived view depends on besides the original bytes. Where a recipe is as
 * `defaultRecipe` makes it, the pull's own treatment stands in (`recipeFor`).
 */
export interface Recipe {
  correction: CorrectionId;
  /** r/min; `adapted`: from the sampling. */
  binWidthRpm: number | 'adapted';
  /** Seconds by which a channel is late, by meaning; missing: 0. Needs a time channel. */
  lags: Partial<Record<ChannelMeaning, number>>;
  /** Hand-set accepted window, r/min; `null`: found. */
  windowRpm: [low: number, high: number] | null;
  /** Add the torque hidden by inertia, where inertia and time are known and it is not already inside. */
  addInertia: boolean;
}

/** A stretch of rows that is not counted, and why. Row numbers from 0, both included. */
export interface Cut {
  fromRow: number;
  toRow: number;
  reason: string;
  /** The reason in pieces, its figures apart. */
  parts?: SaidParts;
}

export interface AcceptanceWindow {
  /** First and last accepted row, from 0. */
  fromRow: number;
  toRow: number;
  direction: 'rising' | 'falling';
  /** r/min, lowest and highest accepted speed */
  windowRpm: [low: number, high: number];
  /** r/min per second, median over the window; `null` without time */
  sweepRateRpmPerS: number | null;
  cuts: Cut[];
}

/** A row that stands out of its neighbours. It is shown and left out of the curve, never hidden. */
export interface Spike {
  row: number;
  meaning: ChannelMeaning;
  value: number;
  /** What the neighbours say, inside unit. */
  expected: number;
}

/**
 * What a pull and a computed run share. `samples`: bin means at whole multiples of the width. `points`: the file's rows
 * are themselves settled means (a step test, a printed table) and stay where they are.
 */
export interface GriddedCurve {
  kindOfRows: 'samples' | 'points';
  binWidthRpm: number;
  /** Ascending, r/min. For `samples` the full run of nodes, empty bins included. */
  engineSpeedRpm: Float64Array;
  /** Rows in each bin. */
  count: Float64Array;
  /** Inside units, one value a node, NaN in an empty bin. */
  channels: Map<ChannelMeaning, Float64Array>;
}

export interface Peak {
  /** Inside unit. */
  value: number;
  atRpm: number;
  /** One standard deviation of value and place from the scatter about the local fit; `null`: too few rows to tell. */
  valueSpread: number | null;
  atRpmSpread: number | null;
  /** The highest figure is the window's last row: not a peak. */
  stillClimbing: boolean;
}

/** How torque and power came to the standard of the view. */
export interface CorrectionApplied {
  /** What was asked for. */
  asked: CorrectionId;
  /** What the figures are in: the standard asked for, or how the file carries them when that cannot be reached. */
  standard: CarriedCorrection['standard'];
  /** What observed figures were multiplied by; `null` unknown. */
  factor: number | null;
  reached: boolean;
}

/** A pull turned into curves by a recipe. Recomputable at any time; never stored as the truth. */
export interface PullView {
  pullId: string;
  /** As used: the one asked for with the pull's own treatment in it. */
  recipe: Recipe;
  correction: CorrectionApplied;
  window: AcceptanceWindow | null;
  spikes: Spike[];
  curve: GriddedCurve | null;
  peakPower: Peak | null;
  peakTorque: Peak | null;
  remarks: Remark[];
}

/** One time of a combination on the brake, from fitting to taking apart. */
export interface SetUp {
  id: string;
  combinationId: string;
  /** ISO 8601 */
  fittedAt: string;
  notes: string;
}

/** The pulls of one day in one cell, in their order. */
export interface Session {
  id: string;
  name: string;
  cell: string;
  /** ISO 8601 date */
  day: string;
  notes: string;
}

/** An original file: bytes are kept by hash and never altered. */
export interface OriginalFile {
  /** SHA-256 of the bytes, hex. */
  hash: string;
  name: string;
  byteLength: number;
  /** ISO 8601 */
  addedAt: string;
  /** The confirmed reading of its columns, as JSON of the formats room; `null` for a file kept only. */
  mapping: unknown;
}
