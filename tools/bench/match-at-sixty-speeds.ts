import { airState } from '@pullbook/core/air';
import { fitMap, type MatchCase, type MatchInput, NO_LOSS } from '@pullbook/core/airpath';
import { absolutePressure, temperature } from '@pullbook/core/quantity';

const SPEEDS = 60;

/** A supercharged engine at sixty speeds with every loss, a cooler and both terms. Invented. */
export function matchAtSixtySpeeds(): MatchCase {
  const air = airState({
    pressure: absolutePressure(99_000),
    temperature: temperature(298.15),
    humidity: null,
    altitude: null,
  });
  const map = fitMap({
    id: 'bench',
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
  });
  if (!air.ok || !map.ok) throw new Error('the bench match has no air or map');
  const engineSpeedRpm = Array.from({ length: SPEEDS }, (_, node) => 3000 + (3500 * node) / (SPEEDS - 1));
  const airFlow = engineSpeedRpm.map((speed) => (0.93 * 1.157 * 5.7e-3 * speed) / 120);
  const loss = (pressureDifference: number, atDensity: number) => ({
    pressureDifference,
    atFlow: 0.4,
    atDensity,
  });
  const input: MatchInput = {
    baseline: {
      engineSpeedRpm,
      brakePower: airFlow.map((flow) => 1e6 * flow),
      airFlow,
      frictionPower: engineSpeedRpm.map((speed) => 30_000 * (speed / 5000) ** 2),
      manifoldPressure: engineSpeedRpm.map(() => 97_500),
      manifoldTemperature: engineSpeedRpm.map(() => 298.15),
      lambda: null,
      air: air.value,
      airBasis: 'given',
      origin: 'given',
      pullIds: [],
    },
    displacement: 5.7e-3,
    compressionRatio: 9.5,
    air: air.value,
    gas: { specificHeat: 1005, gasConstant: 287.05 },
    compressor: { map: map.value, headScale: 0.97, efficiencyShift: 0, constantEfficiency: null },
    drive: {
      kind: 'ribbed belt',
      pulleyRatio: 2,
      stepUp: 3.5,
      slip: 0.01,
      mechanicalEfficiency: 0.95,
      crankPulleyDiameter: null,
      blowerPulleyDiameter: null,
      wrapAngle: null,
      ribs: null,
      maximumImpellerSpeedRpm: null,
      engineSpeedLimitRpm: null,
      overRevMarginRpm: 200,
    },
    inletLoss: loss(1000, 1.15),
    pipeLoss: loss(1000, 1.6),
    bypass: { state: 'shut', leak: 0 },
    cooler: { by: 'water', effectiveness: 0.8, loss: loss(3000, 1.6), coolantTemperature: 290 },
    throttleLoss: { ...NO_LOSS, pressureDifference: 2000, atFlow: 0.4 },
    tap: 'manifold',
    charge: { heatFactor: 1, evaporationCooling: 10, fuelVapour: 0.01 },
    swallowing: {
      scale: 1,
      exhaustPressureRatio: 1.05,
      pressureTermRatio: 1.4,
      heatExponent: 0.5,
      breathing: null,
    },
    work: { factor: 1, gasExchange: true, frictionRise: 0.02 },
  };
  const one = (value: number): number[][] => [[value]];
  return {
    input,
    spread: [
      { key: 'baseline', parts: ['baselineAir', 'baselinePower'], factor: [[0.03], [0, 0.008]] },
      {
        key: 'map',
        parts: ['head', 'mapFlow', 'efficiency'],
        factor: [[0.03], [0, 0.02], [0, 0, 0.02]],
      },
      { key: 'cooler', parts: ['cooler'], factor: one(0.05) },
      { key: 'slip', parts: ['slip'], factor: one(0.005) },
      { key: 'swallowing', parts: ['swallowing'], factor: one(0.02) },
      { key: 'heat', parts: ['chargeHeat'], factor: one(0.1) },
    ],
  };
}
