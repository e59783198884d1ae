import type { AirState } from '../air/index.ts';
import type { Origin } from '../quantity/index.ts';
import type { Remark } from '../remark/index.ts';

/** Air to which a map's flow and speed are corrected. It stands with every map, for makers and shops use different ones. */
export interface MapReference {
  /** Pa, absolute */
  pressure: number;
  /** K */
  temperature: number;
}

/** One point of a compressor map, total to total. */
export interface MapPoint {
  /** kg/s, corrected to the map's reference */
  flow: number;
  /** Outlet over inlet pressure. */
  pressureRatio: number;
  /** r/min of the impeller, corrected to the map's reference */
  speedRpm: number;
  /** Adiabatic, 0 to 1; `null`: not given */
  efficiency: number | null;
}

/** Sizes of a stage; `null`: not known. */
export interface StageGeometry {
  /** m */
  wheelExitDiameter: number | null;
  /** m, at the tip of the inducer */
  wheelInletDiameter: number | null;
  /** Blades at the exit, splitters included. */
  blades: number | null;
  /** rad from radial, against the rotation */
  backsweep: number | null;
}

/** A compressor map as it came: a table of points, or one rated point from which the generic stage is scaled. */
export interface CompressorMap {
  id: string;
  name: string;
  form: 'points' | 'rated';
  reference: MapReference;
  geometry: StageGeometry;
  /** Of a `rated` map exactly one. */
  points: MapPoint[];
  /** Whether the point of least flow of each line is where surge was met, or only where the maker stopped. */
  leftEnd: 'surge' | 'not known';
  origin: Origin;
  notes: string;
  invented: boolean;
  /** ISO 8601 */
  createdAt: string;
}

/** How well a fitted map meets points: shortest distance in (relative flow, relative pressure ratio), root mean square. */
export interface MapError {
  points: number;
  /** Share. */
  pressureRatioRms: number;
  /** Absolute, of efficiency; `null`: no efficiency was given. */
  efficiencyRms: number | null;
}

/** What a map says of its own fit. */
export interface MapQuality extends MapError {
  lines: (MapError & { speedRpm: number })[];
}

/** A map that can be asked at any speed and flow. Plain data: it goes to a thread as it is. */
export interface FittedMap {
  mapId: string | null;
  /** Of its points, so that it has the same in every book; missing: its id stands for it. */
  mark?: string;
  name: string;
  form: CompressorMap['form'];
  leftEnd: CompressorMap['leftEnd'];
  reference: MapReference;
  /** m; where it was not given the one assumed, and `isDiameterAssumed`. */
  wheelExitDiameter: number;
  isDiameterAssumed: boolean;
  /** r/min corrected, lowest and highest line measured; `null`: nothing was measured but a rated point. */
  measuredSpeedRpm: [low: number, high: number] | null;
  quality: MapQuality | null;
  /** One standard deviation of what the fit leaves open: share of the head, absolute of the efficiency, share of the flow. */
  spread: { head: number; efficiency: number; flow: number };
  /** What `speedLineAt` needs; the meaning is the map fit's own. */
  shape: MapShape;
}

/** Coefficients of a fit; `kind` says which file reads them. */
export interface MapShape {
  kind: 'lines' | 'generic';
  /** Numbers by name, arrays over the lines or of a polynomial. */
  numbers: Record<string, number[]>;
}

/** One speed line of a fitted map, ready to be asked. */
export interface SpeedLine {
  /** r/min, corrected */
  speedRpm: number;
  /** Tip speed over the speed of sound at the inlet. */
  tipMach: number;
  /** kg/s, corrected: the left edge (estimated where `leftEnd` is not known), the highest pressure ratio, the largest flow. */
  surgeFlow: number;
  peakFlow: number;
  chokeFlow: number;
  highestPressureRatio: number;
  highestEfficiency: number;
  /** kg/s, corrected: flows that measured lines on either side cover; `null`: outside the measured speeds, or generic. */
  measuredFlow: [low: number, high: number] | null;
  /** What `pressureRatioOn` and `efficiencyOn` need; the meaning is the map fit's own. */
  shape: number[];
}

/** Pressure lost in a filter, pipe, cooler core, throttle or carburettor: grows with flow squared over density. */
export interface FlowLoss {
  /** Pa; 0: none */
  pressureDifference: number;
  /** kg/s at which that was lost */
  atFlow: number;
  /** kg/m³ of the air it was lost in */
  atDensity: number;
}

/** From the crankshaft to the impeller. */
export interface Drive {
  kind: 'ribbed belt' | 'V belt' | 'toothed belt' | 'chain' | 'gear' | 'direct';
  /** Turns of the blower's input for one of the crankshaft: crank pulley over blower pulley, or teeth over teeth. */
  pulleyRatio: number;
  /** Turns of the impeller for one of the input. */
  stepUp: number;
  /** Share of the speed lost by creep and slip; of teeth always 0. */
  slip: number;
  /** Power at the impeller over power at the crankshaft. */
  mechanicalEfficiency: number;
  /** m; `null`: not known */
  crankPulleyDiameter: number | null;
  blowerPulleyDiameter: number | null;
  /** rad of belt about the blower pulley; `null`: not known */
  wrapAngle: number | null;
  ribs: number | null;
  /** r/min of the impeller, the maker's limit; `null`: not known */
  maximumImpellerSpeedRpm: number | null;
  /** r/min of the engine at which it is stopped; `null`: not known */
  engineSpeedLimitRpm: number | null;
  /** r/min by which that may be overrun */
  overRevMarginRpm: number;
}

export interface Cooler {
  /** What carries the heat away. */
  by: 'air' | 'water' | 'ice water';
  /** (hot in - hot out) / (hot in - coolant in), 0 to 1 */
  effectiveness: number;
  loss: FlowLoss;
  /** K, of the coolant as it comes in; `null`: that of the ambient air */
  coolantTemperature: number | null;
}

/** A way for air past the compressor, from its outlet to its inlet or the open. */
export interface Bypass {
  /** `open`: the engine breathes past the compressor, which idles at a pressure ratio of 1. */
  state: 'shut' | 'open' | 'leaking';
  /** Share of the compressor's flow that leaks; 0 unless `leaking`. */
  leak: number;
  /** N·m at the crankshaft that turning the idling unit takes while `open`; missing: 0 */
  idleTorque?: number;
}

/** Constants of the air in the path. */
export interface GasConstants {
  /** J/(kg·K), at constant pressure */
  specificHeat: number;
  /** J/(kg·K) */
  gasConstant: number;
}

/** What the air flow of a baseline rests on, most trusted first. */
export type AirBasis = 'given' | 'air flow' | 'fuel and mixture' | 'torque and efficiency';

/** What the engine does without the supercharger: curves on common nodes, as observed in its own air. Inside units. */
export interface Baseline {
  /** r/min, rising */
  engineSpeedRpm: number[];
  brakePower: number[];
  /** kg/s of moist air swallowed */
  airFlow: number[];
  frictionPower: number[];
  /** Pa, absolute, in the manifold; K */
  manifoldPressure: number[];
  manifoldTemperature: number[];
  /** `null`: not known */
  lambda: number[] | null;
  /** Share of the manifold's pressure that was fuel vapour; missing: as in the match, with the same fuel at the same place. */
  fuelVapour?: number;
  /** K by which fuel cooled its charge before the probe; missing: as in the match, with the same fuel at the same place. */
  evaporationCooling?: number;
  air: AirState;
  airBasis: AirBasis;
  /** `measured`: naturally aspirated pulls of this very engine. `scaled`: see fit. `given`: written in a file. */
  origin: 'measured' | 'scaled' | 'given';
  pullIds: string[];
  /** Of its curves, so that it has the same in every book; missing: its pulls stand for it. */
  mark?: string;
}

/** Everything a match rests on. Plain numbers, inside units. */
export interface MatchInput {
  baseline: Baseline;
  /** m³, all cylinders, four-stroke */
  displacement: number;
  /** `null`: not known, 9.5 is taken for the pressure term */
  compressionRatio: number | null;
  /** The air of the match: this day, another, at altitude. */
  air: AirState;
  gas: GasConstants;
  compressor: {
    map: FittedMap;
    /** On the isentropic head; 1 as the map says. */
    headScale: number;
    /** On the flow of the map's lines; missing: 1, as the map says. */
    flowScale?: number;
    /** On the head at each node of the baseline, what a fit found over speed; missing or `null`: 1 everywhere. */
    headShape?: number[] | null;
    /** Added to the map's efficiency. */
    efficiencyShift: number;
    /** One efficiency at every point in place of the map's; `null`: the map's. */
    constantEfficiency: number | null;
  };
  drive: Drive;
  /** Filter and pipe before the compressor. */
  inletLoss: FlowLoss;
  /** Pipe behind the compressor. */
  pipeLoss: FlowLoss;
  bypass: Bypass;
  cooler: Cooler | null;
  /** Throttle or carburettor; `null`: at each engine speed what the baseline's manifold stood below its ambient air. */
  throttleLoss: FlowLoss | null;
  /** Where boost is read. */
  tap: 'manifold' | 'before throttle' | 'compressor outlet';
  charge: {
    /** On the rise of the charge's temperature over the ambient air that is left before fuel; 1 as computed. */
    heatFactor: number;
    /** K by which fuel cools the charge before the manifold's probe; 0: port injection */
    evaporationCooling: number;
    /** Share of the manifold's pressure that is fuel vapour. */
    fuelVapour: number;
    /**
     * K, of what warms the charge in the manifold: by the same share of how much hotter it is than the charge as in the
     * baseline, at each engine speed. `null` or missing: nothing warms it.
     */
    wallTemperature?: number | null;
  };
  swallowing: {
    /** On the air swallowed; 1 as the baseline says. */
    scale: number;
    /** Exhaust over ambient pressure of the baseline at its highest flow; the excess goes with flow squared. */
    exhaustPressureRatio: number;
    /** Ratio of specific heats in the pressure term; `null`: the term is left out. */
    pressureTermRatio: number | null;
    /** Exponent of manifold temperature over the baseline's; 0.5, or 0 to leave the term out. */
    heatExponent: number;
    /** On the air swallowed at each node of the baseline (+8 %: 1.08); `null`: 1 everywhere. */
    breathing: number[] | null;
  };
  work: {
    /** On the work an air mass does, against the baseline: spark, mixture. */
    factor: number;
    /** On that work at each node of the baseline, what a fit found over speed; missing or `null`: 1 everywhere. */
    shape?: number[] | null;
    /** On that work at each node, for another fuel than the pulls behind it were made on; missing or `null`: the same fuel. No fit moves it. */
    fuelFactor?: number[] | null;
    /** Whether the exchange of gas does work as manifold and exhaust pressure part from the baseline's. */
    gasExchange: boolean;
    /** Pa of friction mean pressure for each Pa of manifold pressure above the baseline's. */
    frictionRise: number;
  };
}

/** Figures of a match over engine speed; inside units. */
export const MATCH_FIGURES = [
  'boost', // at the tap, gauge
  'manifoldPressure',
  'manifoldTemperature',
  'compressorInletPressure',
  'dischargePressure', // absolute, at the compressor's outlet
  'dischargeTemperature',
  'pressureRatio', // of the compressor
  'efficiency',
  'impellerSpeedRpm',
  'correctedSpeedRpm',
  'correctedFlow', // through the compressor, at the map's reference
  'compressorFlow',
  'airFlow', // into the engine
  'volumetricEfficiency', // at manifold density
  'drivePower', // at the crankshaft
  'driveTorque',
  'indicatedPower',
  'frictionPower',
  'brakePower',
  'brakeTorque',
  'boostIndex', // brake power over the baseline's, over manifold pressure over ambient
  'surgeMargin', // share: (flow - surge flow) / flow
  'chokeMargin', // share: (choke flow - flow) / choke flow
  'slopeOfLine', // relative change of pressure ratio for a relative change of flow along the speed line
  'tipSpeed', // m/s
  'coolerHeat', // W
] as const;
export type MatchFigure = (typeof MATCH_FIGURES)[number];

/** Where on the map a point lies; the worst that holds. */
export type MatchState =
  | 'on the map'
  | 'beyond the measured map' // speed or flow where nothing was measured
  | 'surge risk' // left of the line's highest pressure ratio
  | 'surge' // left of the surge edge
  | 'choked' // the line ends before the engine has what it would swallow
  | 'bypassed'
  | 'no solution';

/** A match at each node of the baseline. NaN where there is no solution. */
export interface MatchCurve {
  engineSpeedRpm: number[];
  figures: Record<MatchFigure, Float64Array>;
  state: MatchState[];
}

/** What of a match is uncertain, by part: a difference of two matches does not carry what they share. */
export type SpreadPart =
  | 'baselineAir' // share, common to all speeds
  | 'baselinePower' // share
  | 'head' // share
  | 'mapFlow' // share
  | 'efficiency' // absolute
  | 'cooler' // absolute, of the effectiveness
  | 'slip' // absolute
  | 'swallowing' // share
  | 'chargeHeat' // share
  | 'work'; // share

/**
 * Parts that are drawn together. `key` says what they belong to (`map of blower 2`, `baseline`): two matches with the same key
 * share the same draws.
 */
export interface SpreadGroup {
  key: string;
  /** A part may stand more than once where it has a shape: its lines add up. */
  parts: SpreadPart[];
  /**
   * A line for each part: by how much it moves with each of the standard normals of the group. Groups of one key share these normals, the first
   * with the first, so lines may be of any length: a Cholesky triangle, or lines of one that is larger. One part by itself: one standard deviation.
   */
  factor: number[][];
  /** How much of a line acts at each node of the baseline, by part; missing or `null`: all of it everywhere. */
  shapes?: (number[] | null)[];
  /** A fit leaves it as it is: it is not about what the fit saw (another fuel, a part that was never pulled). */
  staysBesideFit?: true;
}

/** A match with what it is uncertain by. */
export interface MatchCase {
  input: MatchInput;
  spread: SpreadGroup[];
}

/** Pointwise band over the nodes: 95 of 100 draws. NaN where too few draws had a solution. */
export interface FigureBand {
  low: number[];
  high: number[];
}

export interface MatchBands {
  /** By case, in the order given. */
  cases: Record<MatchFigure, FigureBand>[];
  /** Case against the first, as differences of inside units; empty for one case. */
  differences: Record<MatchFigure, FigureBand>[];
  draws: number;
  seed: number;
}

/**
 * What a person states of the model himself, in place of what the sheet says or what would be assumed. Inside units; what is
 * left out is not stated. Every input of the model can be stated, so that an outside solver can be held against it.
 */
export interface StatedModel {
  displacement?: number;
  compressionRatio?: number;
  specificHeat?: number;
  gasConstant?: number;
  headScale?: number;
  flowScale?: number;
  efficiencyShift?: number;
  constantEfficiency?: number;
  pulleyRatio?: number;
  stepUp?: number;
  slip?: number;
  mechanicalEfficiency?: number;
  inletLoss?: FlowLoss;
  pipeLoss?: FlowLoss;
  /** `null`: as the baseline has it */
  throttleLoss?: FlowLoss | null;
  bypass?: Bypass;
  /** `null`: no cooler */
  cooler?: Cooler | null;
  tap?: MatchInput['tap'];
  heatFactor?: number;
  evaporationCooling?: number;
  fuelVapour?: number;
  /** `null`: nothing warms the charge in the manifold */
  wallTemperature?: number | null;
  swallowingScale?: number;
  exhaustPressureRatio?: number;
  /** `null`: the term is left out */
  pressureTermRatio?: number | null;
  heatExponent?: number;
  /** Share by which more is swallowed at these speeds of the engine. */
  breathing?: { fromRpm: number; toRpm: number; share: number };
  workFactor?: number;
  gasExchange?: boolean;
  frictionRise?: number;
  /** One standard deviation of a part; 0 takes it out of the band. */
  spread?: Partial<Record<SpreadPart, number>>;
}

/** A match made ready, with what had to be assumed for it. */
export interface MatchReady extends MatchCase {
  /** One remark for each thing that was not known: what was taken, and on what ground. */
  assumptions: Remark[];
}
