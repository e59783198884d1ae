import { type MatchCase, type MatchInput, NO_LOSS } from '@pullbook/core/airpath';
import {
  dryAir,
  inventedBaseline,
  nodesOf,
  plainInput,
} from '../../packages/core/src/airpath/match/match-input.testing.ts';

const SPEEDS = 60;

/** A supercharged engine at sixty speeds with every loss, a cooler and both terms. Invented. */
export function matchAtSixtySpeeds(): MatchCase {
  const air = dryAir(99_000, 298.15);
  const loss = (pressureDifference: number, atDensity: number) => ({
    pressureDifference,
    atFlow: 0.4,
    atDensity,
  });
  const plain = plainInput({ air, baseline: inventedBaseline(air, nodesOf(3000, 6500, SPEEDS)) });
  const input: MatchInput = {
    ...plain,
    compressor: { ...plain.compressor, headScale: 0.97 },
    inletLoss: loss(1000, 1.15),
    pipeLoss: loss(1000, 1.6),
    cooler: { by: 'water', effectiveness: 0.8, loss: loss(3000, 1.6), coolantTemperature: 290 },
    throttleLoss: { ...NO_LOSS, pressureDifference: 2000, atFlow: 0.4 },
    charge: { heatFactor: 1, evaporationCooling: 10, fuelVapour: 0.01 },
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
