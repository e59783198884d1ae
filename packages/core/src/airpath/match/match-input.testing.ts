import type { AirState } from '../../air/index.ts';
import { airState } from '../../air/index.ts';
import { absolutePressure, temperature } from '../../quantity/index.ts';
import { fitMap } from '../map/fit-map.ts';
import type { Baseline, CompressorMap, FittedMap, MatchInput } from '../model.ts';
import { NO_LOSS } from '../way/loss.ts';

/** Dry air of a pressure, Pa, and temperature, K. */
export function dryAir(pressure: number, kelvin: number): AirState {
  const air = airState({
    pressure: absolutePressure(pressure),
    temperature: temperature(kelvin),
    humidity: { route: 'vapourPressure', pressure: absolutePressure(0) },
    altitude: null,
  });
  if (!air.ok) throw new Error(air.remarks[0]?.message);
  return air.value;
}

/** A wheel of 152 mm rated at 0.5 kg/s, 1.8 and 75 %: invented. */
export const RATED_MAP: CompressorMap = {
  id: 'rated',
  name: 'invented wheel',
  form: 'rated',
  reference: { pressure: 100_000, temperature: 298 },
  geometry: { wheelExitDiameter: 0.152, wheelInletDiameter: 0.106, blades: 16, backsweep: 0.6 },
  points: [{ flow: 0.5, pressureRatio: 1.8, speedRpm: 44_000, efficiency: 0.75 }],
  leftEnd: 'not known',
  origin: 'assumed',
  notes: '',
  invented: true,
  createdAt: '2026-01-01T00:00:00Z',
};

let fitted: FittedMap | null = null;

export function ratedMap(): FittedMap {
  if (fitted) return fitted;
  const map = fitMap(RATED_MAP);
  if (!map.ok) throw new Error(map.remarks[0]?.message);
  fitted = map.value;
  return fitted;
}

/** Nodes from `from` to `to` r/min, both in. */
export const nodesOf = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, node) => from + ((to - from) * node) / (count - 1));

/** An invented engine of 5.7 litres that swallows 85 to 95 % and does 2.9 MJ indicated for each kg of air. */
export function inventedBaseline(air: AirState, engineSpeedRpm = nodesOf(3000, 6500, 15)): Baseline {
  const displacement = 5.7e-3;
  const manifoldTemperature = engineSpeedRpm.map(() => air.temperature);
  const manifoldPressure = engineSpeedRpm.map((speed) => air.pressure - 3000 * (speed / 6500) ** 2);
  const airFlow = engineSpeedRpm.map((speed, node) => {
    const efficiency = 0.95 - 0.1 * ((speed - 4800) / 1800) ** 2;
    const density = (manifoldPressure[node]! / air.pressure) * air.density;
    return (efficiency * density * displacement * speed) / 120;
  });
  const frictionPower = engineSpeedRpm.map((speed) => 30_000 * (speed / 5000) ** 2);
  return {
    engineSpeedRpm,
    brakePower: airFlow.map((flow, node) => 1.15e6 * flow - frictionPower[node]! * 0.2),
    airFlow,
    frictionPower,
    manifoldPressure,
    manifoldTemperature,
    lambda: null,
    air,
    airBasis: 'given',
    origin: 'given',
    pullIds: [],
  };
}

/** A supercharged engine with nothing lost anywhere and no cooler; change what a test is about. */
export function plainInput(changes: Partial<MatchInput> = {}): MatchInput {
  const air = changes.air ?? dryAir(99_000, 298.15);
  return {
    baseline: inventedBaseline(air),
    displacement: 5.7e-3,
    compressionRatio: 9.5,
    air,
    gas: { specificHeat: 1005, gasConstant: 287.05 },
    compressor: { map: ratedMap(), headScale: 1, efficiencyShift: 0, constantEfficiency: null },
    drive: {
      kind: 'ribbed belt',
      pulleyRatio: 2,
      stepUp: 3.5,
      slip: 0.01,
      mechanicalEfficiency: 0.95,
      crankPulleyDiameter: 0.19,
      blowerPulleyDiameter: 0.095,
      wrapAngle: 3,
      ribs: 8,
      maximumImpellerSpeedRpm: 55_000,
      engineSpeedLimitRpm: 6800,
      overRevMarginRpm: 200,
    },
    inletLoss: NO_LOSS,
    pipeLoss: NO_LOSS,
    bypass: { state: 'shut', leak: 0 },
    cooler: null,
    throttleLoss: NO_LOSS,
    tap: 'manifold',
    charge: { heatFactor: 1, evaporationCooling: 0, fuelVapour: 0 },
    swallowing: {
      scale: 1,
      exhaustPressureRatio: 1.05,
      pressureTermRatio: 1.4,
      heatExponent: 0.5,
      breathing: null,
    },
    work: { factor: 1, gasExchange: false, frictionRise: 0 },
    ...changes,
  };
}
