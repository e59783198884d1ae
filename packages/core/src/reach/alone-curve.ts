import { type Baseline, MATCH_FIGURES, type MatchCurve, type MatchFigure } from '../airpath/index.ts';
import { MINUTE } from '../quantity/index.ts';

/**
 * What the engine does without a supercharger as a curve of the same shape as a match: power as its air and its fuel go, friction as it
 * was. Of a compressor that is not there figures are NaN; boost, drive and heat of a cooler are 0.
 *
 * @param breathing on the air swallowed, a factor at each node; `null`: as it is
 * @param fuelFactor on the work of that air, a factor at each node; `null`: the same fuel
 * @example aloneCurve(baseline, null, null).figures.brakePower[0] // as the baseline has it
 */
export function aloneCurve(
  baseline: Baseline,
  breathing: readonly number[] | null,
  fuelFactor: readonly number[] | null,
): MatchCurve {
  const { engineSpeedRpm, brakePower, frictionPower, airFlow, manifoldPressure, manifoldTemperature, air } =
    baseline;
  const figures = Object.fromEntries(
    MATCH_FIGURES.map((figure) => [figure, new Float64Array(engineSpeedRpm.length).fill(Number.NaN)]),
  ) as Record<MatchFigure, Float64Array>;
  engineSpeedRpm.forEach((speed, node) => {
    const more = breathing?.[node] ?? 1;
    const indicated = (brakePower[node]! + frictionPower[node]!) * more * (fuelFactor?.[node] ?? 1);
    const power = indicated - frictionPower[node]!;
    figures.boost[node] = 0;
    figures.manifoldPressure[node] = manifoldPressure[node]!;
    figures.manifoldTemperature[node] = manifoldTemperature[node]!;
    figures.airFlow[node] = airFlow[node]! * more;
    figures.compressorFlow[node] = 0;
    figures.drivePower[node] = 0;
    figures.driveTorque[node] = 0;
    figures.coolerHeat[node] = 0;
    figures.indicatedPower[node] = indicated;
    figures.frictionPower[node] = frictionPower[node]!;
    figures.brakePower[node] = power;
    figures.brakeTorque[node] = (power * MINUTE) / (2 * Math.PI * speed);
    figures.boostIndex[node] = power / brakePower[node]! / (manifoldPressure[node]! / air.pressure);
  });
  return { engineSpeedRpm, figures, state: engineSpeedRpm.map(() => 'bypassed') };
}
