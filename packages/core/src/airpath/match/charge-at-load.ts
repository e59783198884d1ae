import type { ChargeAtLoad } from '../../fuel/index.ts';
import type { MatchCurve, MatchInput } from '../model.ts';
import { USUAL_COMPRESSION_RATIO } from '../way/swallow.ts';

/** The charge that a match brings to the engine at a node, for spark and knock; the exhaust's excess goes with flow squared, as in the match. */
export function chargeAtLoad(
  input: MatchInput,
  { figures, engineSpeedRpm }: MatchCurve,
  node: number,
  lambda: number,
): ChargeAtLoad {
  const { baseline, air, swallowing } = input;
  const highestFlow = Math.max(...baseline.airFlow);
  const flow = (figures.airFlow[node]! * baseline.air.pressure) / (highestFlow * air.pressure);
  return {
    engineSpeedRpm: engineSpeedRpm[node]!,
    manifoldPressure: figures.manifoldPressure[node]!,
    manifoldTemperature: figures.manifoldTemperature[node]!,
    compressionRatio: input.compressionRatio ?? USUAL_COMPRESSION_RATIO,
    exhaustPressure: air.pressure * (1 + (swallowing.exhaustPressureRatio - 1) * flow * flow),
    lambda,
  };
}
