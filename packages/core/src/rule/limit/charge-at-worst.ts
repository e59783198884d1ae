import { chargeAtLoad, type MatchCurve } from '../../airpath/index.ts';
import {
  type ChargeAtLoad,
  type FuelSupply,
  peakPressure,
  type SparkFigures,
  sparkFigures,
} from '../../fuel/index.ts';
import { type EngineAtLimits, nodeOfHighest } from './engine-at-limits.ts';

/** The spark that the fuel allows where the charge is worst for it. */
export interface SparkAtWorst {
  spark: SparkFigures;
  rpm: number;
  /** Pa absolute, highest in the cylinder with that spark */
  peak: () => number;
}

/** Whether the fuel's knock can be reckoned: octane and compression ratio are known. */
export const isKnockKnown = ({ supply, parts }: EngineAtLimits): boolean =>
  supply !== null &&
  parts.compressionRatio !== null &&
  (supply.fuel.researchOctane !== null || supply.fuel.motorOctane !== null);

/** Several limits ask it of one curve, and a search asks again with other injectors; no sum of theirs takes as long. */
const RECKONED = new WeakMap<MatchCurve, { of: unknown[]; worst: SparkAtWorst | null }>();

/**
 * Of two speeds, that of the highest manifold pressure and that of the most torque, where the same charge has longer to light, the one
 * where the fuel asks for the later spark against best torque. `ends`: with what the assumptions leave open.
 */
export function sparkAtWorst(
  at: EngineAtLimits,
  { ends = false }: { ends?: boolean } = {},
): SparkAtWorst | null {
  const { curve, supply, input, parts } = at;
  if (curve === null || supply === null || !isKnockKnown(at)) return null;
  const of = [supply.fuel, supply.lambda, supply.mixes, input?.swallowing, parts.compressionRatio, ends];
  const known = RECKONED.get(curve);
  if (known?.of.every((one, place) => one === of[place])) return known.worst;
  const worst = reckoned(at, curve, supply, ends);
  RECKONED.set(curve, { of, worst });
  return worst;
}

function reckoned(
  at: EngineAtLimits,
  curve: MatchCurve,
  supply: FuelSupply,
  ends: boolean,
): SparkAtWorst | null {
  const { manifoldPressure, brakeTorque } = curve.figures;
  const nodes = new Set(
    [manifoldPressure, brakeTorque].map((figure) => nodeOfHighest(curve, (node) => figure[node]!)),
  );
  let worst: SparkAtWorst | null = null;
  for (const node of nodes) {
    if (node === null) continue;
    const charge = chargeAt(at, node);
    if (charge === null) continue;
    const spark = sparkFigures(charge, supply.fuel, { mixes: supply.mixes, ends });
    if (worst !== null && lateness(worst.spark) >= lateness(spark)) continue;
    let highest: number | null = null;
    const peak = (): number => {
      highest ??= peakPressure(charge, supply.fuel, { mixes: supply.mixes, advance: spark.allowed });
      return highest;
    };
    worst = { spark, rpm: curve.engineSpeedRpm[node]!, peak };
  }
  return worst;
}

/** rad by which the fuel asks for a later spark than best torque does. */
const lateness = ({ forBestTorque, allowed }: SparkFigures): number => forBestTorque - allowed;

/** Exhaust over open air without a supercharger; it hardly moves the knock (common practice, no source). */
const USUAL_EXHAUST_RATIO = 1.05;

function chargeAt({ input, curve, supply, parts }: EngineAtLimits, node: number): ChargeAtLoad | null {
  const { manifoldPressure, manifoldTemperature } = curve!.figures;
  const [pressure, temperature] = [manifoldPressure[node]!, manifoldTemperature[node]!];
  if (!(pressure > 0) || !(temperature > 0)) return null;
  const [compressionRatio, { lambda }] = [parts.compressionRatio!, supply!];
  if (input !== null) return { ...chargeAtLoad(input, curve!, node, lambda), compressionRatio };
  return {
    engineSpeedRpm: curve!.engineSpeedRpm[node]!,
    manifoldPressure: pressure,
    manifoldTemperature: temperature,
    compressionRatio,
    exhaustPressure: USUAL_EXHAUST_RATIO * pressure,
    lambda,
  };
}
