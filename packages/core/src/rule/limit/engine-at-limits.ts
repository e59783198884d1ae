import type { MatchCurve, MatchFigure, MatchInput } from '../../airpath/index.ts';
import type { CombinationSheet } from '../../combination/index.ts';
import type { FuelSupply } from '../../fuel/index.ts';
import type { RuleThresholds } from '../model.ts';
import { speakerOf } from '../speaker.ts';
import { type SheetParts, sheetParts } from './sheet-parts.ts';

/** A planned engine as its limits are read off it. */
export interface LimitsAt {
  sheet: CombinationSheet;
  /** `null`: without a supercharger */
  input: MatchInput | null;
  /** Of an engine without a supercharger: the compressor's figures NaN, boost 0, state `bypassed`. */
  curve: MatchCurve;
  supply: FuelSupply;
  /** Pa, gauge, that may not be passed; `null`: none was asked for */
  boostCap: number | null;
  /** r/min at which the engine is stopped, or to which it is matched where that is more; what it may be overrun by is not in it. */
  highestEngineSpeedRpm: number;
}

/** A highest value with the engine speed it stands at. */
export interface Highest {
  value: number;
  rpm: number | null;
}

/** What every limit is measured from: a planned engine, or how far a pull drove one. `null`: not known. */
export interface EngineAtLimits {
  sheet: CombinationSheet;
  parts: SheetParts;
  input: MatchInput | null;
  curve: MatchCurve | null;
  supply: FuelSupply | null;
  boostCap: number | null;
  highestRpm: number | null;
  /** Pa, gauge, where boost is read */
  boost: Highest | null;
  /** W at the brake */
  power: Highest | null;
  /** A threshold of the catalogue or the shop's own: `limit('V17.duty')`. */
  limit: (id: string) => number;
}

/** A planned engine, ready to be measured. */
export const plannedAtLimits = (at: LimitsAt, thresholds: RuleThresholds): EngineAtLimits => ({
  sheet: at.sheet,
  parts: sheetParts(at.sheet),
  input: at.input,
  curve: at.curve,
  supply: at.supply,
  boostCap: at.boostCap,
  highestRpm: at.highestEngineSpeedRpm,
  boost: highestOf(at.curve, 'boost'),
  power: highestOf(at.curve, 'brakePower'),
  limit: speakerOf('', thresholds).limit,
});

/** The highest of a figure over engine speed; `null`: it is nowhere known. */
export function highestOf(curve: MatchCurve, figure: MatchFigure): Highest | null {
  const values = curve.figures[figure];
  const node = nodeOfHighest(curve, (at) => values[at]!);
  return node === null ? null : { value: values[node]!, rpm: curve.engineSpeedRpm[node]! };
}

/** The node at which something is highest; NaN is passed over. `null`: it is nowhere a number. */
export function nodeOfHighest(curve: MatchCurve, of: (node: number) => number): number | null {
  let best: number | null = null;
  let highest = Number.NEGATIVE_INFINITY;
  for (let node = 0; node < curve.engineSpeedRpm.length; node++) {
    const value = of(node);
    if (value > highest) {
      highest = value;
      best = node;
    }
  }
  return best;
}

/** Pa above the open air in the manifold itself; of an engine without supercharger none. */
export const boostInManifold = ({ input, curve }: EngineAtLimits, node: number): number =>
  input === null ? 0 : curve!.figures.manifoldPressure[node]! - input.air.pressure;
