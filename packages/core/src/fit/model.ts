import type { AirState } from '../air/index.ts';
import type { Baseline, Bend, MatchCase, MatchFigure } from '../airpath/index.ts';
import type { Fuel } from '../fuel/index.ts';
import type { Remark, Said } from '../remark/index.ts';

/** A boosted pull as the fit sees it: observed figures on nodes, in its own air. Inside units; `null`: not logged. */
export interface BoostedPull {
  pullId: string;
  /** r/min, rising */
  engineSpeedRpm: number[];
  brakePower: number[];
  boost: number[] | null;
  chargeTemperature: number[] | null;
  dischargeTemperature: number[] | null;
  /** Measured, or by fuel and mixture. */
  airFlow: number[] | null;
  impellerSpeedRpm: number[] | null;
  air: AirState;
}

/** A pull with the match it is held against: its own drive, cooler, fuel and air, factors and their spread as before any fit. */
export interface FitTarget extends MatchCase {
  pull: BoostedPull;
  /** Of the pull, where it is not that of the pulls without supercharger. */
  fuel?: Fuel;
}

export type FitParameterId =
  | 'headScale'
  | 'flowScale'
  | 'swallowingScale'
  | 'chargeHeat'
  | 'workFactor'
  | 'slip';

/** What has a shape over speed beside its parameter. */
export type Shaped = 'head' | 'swallowing' | 'work';

/** All that a fit moves: the parameters, and of each shape how much of each bend. */
export type MoveId = FitParameterId | `${Shaped} ${Bend}`;
export type Moves = Record<MoveId, number>;

/** Over what shapes run: engine speed, and for the head the impeller's, told as engine speed at this ratio. */
export interface BendAxis {
  /** r/min of the engine */
  lowRpm: number;
  highRpm: number;
  /** Turns of the impeller for one of the engine, without slip. */
  overallRatio: number;
}

/** Moves as found, and what is open of them. */
export interface FittedMoves {
  by: Moves;
  /** In the order of all moves, a line each: by how much it moves with each of the fit's standard normals. */
  lines: number[][];
}

export interface FitParameter {
  id: FitParameterId;
  prior: { value: number; spread: number };
  value: number;
  /** One standard deviation after the fit. */
  spread: number;
  /** Channels that speak of it. Without any it stays at its prior. */
  from: string[];
}

/** Measured less matched over engine speed, after the fit. */
export interface FitResidual {
  pullId: string;
  figure: MatchFigure;
  engineSpeedRpm: number[];
  measured: number[];
  matched: number[];
  /** Share of the figure (of temperatures: K). */
  rms: number;
}

/** What the residuals look like: slip, a leak, soak, retard. Never sure, and says what would settle it. */
export interface FitReading {
  id: 'slip' | 'leak' | 'soak' | 'retard' | 'probe';
  /** `seen`: shaft speed or several channels say so. `possible`: the residuals look like it. */
  strength: 'seen' | 'possible';
  text: Said;
  wouldSettle: Said | null;
}

/** What a fit was made on. A case that differs in one of these is not wholly told by it. */
export interface FitGround {
  /** Keys of the spread groups of airpath. */
  baseline: string;
  /** Pulls without supercharger behind it: a baseline scaled from them has their air and what is wrong with it. */
  baselinePullIds: string[];
  map: string;
  coolers: string[];
  /** Turns of the impeller for one of the engine, without slip, one for each pull. */
  overallRatios: number[];
  /** Of its pulls, where it is not that of the pulls without supercharger. */
  fuel?: Fuel;
}

/** A match adapted to a tester's own boosted pulls. */
export interface MatchFit {
  /** Of this combination. */
  pullIds: string[];
  /** All that the fit rests on: also those of other combinations that were fitted with it. */
  restsOn: string[];
  ground: FitGround;
  /** Of this combination. */
  parameters: FitParameter[];
  /** Share of the work of its air that a kilogram lost under boost against the engine without; 0: none. */
  lostWork: number;
  axis: BendAxis;
  /** Of this combination as it was pulled. */
  own: FittedMoves;
  /** What another pulley, cooler or cam on this engine and unit takes of it; without what belongs to these pulls alone. */
  carried: FittedMoves;
  /** Of the draws of what is open: combinations fitted together share it. */
  key: string;
  residuals: FitResidual[];
  readings: FitReading[];
  remarks: Remark[];
}

/** A figure over engine speed with its 95 % band, inside unit. */
export interface PredictedFigure {
  value: number[];
  low: number[];
  high: number[];
}

/** What was foretold over engine speed, to be laid beside the pull. */
export interface PredictedCurve {
  /** r/min, rising */
  engineSpeedRpm: number[];
  /** As observed in `air`; W */
  power: PredictedFigure;
  /** Pa, gauge; `null`: no boost foretold */
  boost: PredictedFigure | null;
  /** The air that was reckoned with: Pa, K. */
  air: { pressure: number; temperature: number };
}

/** A curve that stands in for a naturally aspirated pull that was never made. Never shown as measured. */
export interface ScaledBaseline {
  baseline: Baseline;
  /** Share, pointwise: 95 % band of brake power. */
  power: { low: number[]; high: number[] };
  /** What was scaled by what: for the page and the report. */
  basis: Said;
  remarks: Remark[];
}
