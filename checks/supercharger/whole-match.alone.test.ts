import { readFileSync } from 'node:fs';
import { type FlowLoss, type MatchInput, solveMatch } from '@pullbook/core/airpath';
import { describe, expect, test, vi } from 'vitest';
import { analyticMap } from './analytic-compressor.ts';
import { dryAir } from './engine-at-hand.ts';

// The outside solver's compressor in place of fitted lines, so that both solve the same thing.
vi.mock('../../packages/core/src/airpath/map/speed-line.ts', async () => ({
  ...(await import('./analytic-compressor.ts')).IN_PLACE_OF_SPEED_LINES,
}));

type Triple = [pressureDifference: number, atFlow: number, atDensity: number];

interface OutsideCase {
  name: string;
  engineSpeedRpm: number[];
  baselinePressure: number;
  baselineManifoldPressure: number[];
  baselineManifoldTemperature: number;
  baselineAirFlow: number[];
  frictionPower: number[];
  brakePower: number[];
  pressure: number;
  temperature: number;
  ratio: number;
  slip: number;
  mechanicalEfficiency: number;
  inletLoss: Triple;
  pipeLoss: Triple;
  coolerLoss: Triple;
  throttleLoss: Triple;
  effectiveness: number;
  coolantTemperature: number;
  leak: number;
  heatFactor: number;
  evaporationCooling: number;
  exhaustPressureRatio: number;
  pressureTermRatio: number | null;
  heatExponent: number;
  breathing: number;
  workFactor: number;
  gasExchange: boolean;
  frictionRise: number;
  constantEfficiency: number | null;
  steepness: number;
  answers: Record<string, number>[];
}

const CASES: OutsideCase[] = JSON.parse(readFileSync(new URL('cases.json', import.meta.url), 'utf8'));

const lossOf = ([pressureDifference, atFlow, atDensity]: Triple): FlowLoss => ({
  pressureDifference,
  atFlow,
  atDensity,
});

function inputOf(one: OutsideCase): MatchInput {
  return {
    baseline: {
      engineSpeedRpm: one.engineSpeedRpm,
      brakePower: one.brakePower,
      airFlow: one.baselineAirFlow,
      frictionPower: one.frictionPower,
      manifoldPressure: one.baselineManifoldPressure,
      manifoldTemperature: one.engineSpeedRpm.map(() => one.baselineManifoldTemperature),
      lambda: null,
      air: dryAir(one.baselinePressure, one.baselineManifoldTemperature),
      airBasis: 'given',
      origin: 'given',
      pullIds: [],
    },
    displacement: 5.7e-3,
    compressionRatio: 9.5,
    air: dryAir(one.pressure, one.temperature),
    gas: { specificHeat: 1005, gasConstant: 287.05 },
    compressor: {
      map: analyticMap(one.steepness),
      headScale: 1,
      efficiencyShift: 0,
      constantEfficiency: one.constantEfficiency,
    },
    drive: {
      kind: 'V belt',
      pulleyRatio: 2,
      stepUp: one.ratio / 2,
      slip: one.slip,
      mechanicalEfficiency: one.mechanicalEfficiency,
      crankPulleyDiameter: null,
      blowerPulleyDiameter: null,
      wrapAngle: null,
      ribs: null,
      maximumImpellerSpeedRpm: null,
      engineSpeedLimitRpm: null,
      overRevMarginRpm: 200,
    },
    inletLoss: lossOf(one.inletLoss),
    pipeLoss: lossOf(one.pipeLoss),
    bypass: { state: one.leak > 0 ? 'leaking' : 'shut', leak: one.leak },
    cooler: {
      by: 'water',
      effectiveness: one.effectiveness,
      loss: lossOf(one.coolerLoss),
      coolantTemperature: one.coolantTemperature,
    },
    throttleLoss: lossOf(one.throttleLoss),
    tap: 'manifold',
    charge: { heatFactor: one.heatFactor, evaporationCooling: one.evaporationCooling, fuelVapour: 0 },
    swallowing: {
      scale: 1,
      exhaustPressureRatio: one.exhaustPressureRatio,
      pressureTermRatio: one.pressureTermRatio,
      heatExponent: one.heatExponent,
      breathing: one.engineSpeedRpm.map(() => one.breathing),
    },
    work: { factor: one.workFactor, gasExchange: one.gasExchange, frictionRise: one.frictionRise },
  };
}

// The gas constant of dry air differs in the seventh digit between the two; 287.05 stands in both for all but the ratio of two airs, which is 1.
test.each(CASES)('an outside solver of all equations at once: $name', (one) => {
  const { figures } = solveMatch(inputOf(one));
  for (const [node, answer] of one.answers.entries()) {
    for (const [figure, value] of Object.entries(answer)) {
      const ours = figures[figure as keyof typeof figures][node]!;
      expect(Math.abs(ours / value - 1), `${figure} at ${one.engineSpeedRpm[node]} r/min`).toBeLessThan(1e-9);
    }
  }
});

describe('8 % more swallowed, against the independent intersection', () => {
  const boosts = (name: string) => {
    const one = CASES.find((listed) => listed.name === name)!;
    return { ours: solveMatch(inputOf(one)).figures.boost, outside: one.answers.map(({ boost }) => boost!) };
  };
  test.each(['falling', 'flat', 'steep'])('%s line: change of boost within 0.3 kPa', (line) => {
    const before = boosts(`${line} line, breathing 1.0`);
    const after = boosts(`${line} line, breathing 1.08`);
    before.outside.forEach((boost, node) => {
      const change = after.ours[node]! - before.ours[node]!;
      expect(Math.abs(change - (after.outside[node]! - boost))).toBeLessThan(300);
    });
  });

  test('the steeper the line falls, the more boost goes; on a flat one without losses none', () => {
    const changeAtTop = (line: string, losses: boolean) => {
      const top = (breathing: string) => {
        const one = CASES.find(({ name }) => name === `${line} line, breathing ${breathing}`)!;
        const none: Triple = [0, 1, 1];
        const bare = { ...one, inletLoss: none, pipeLoss: none, coolerLoss: none, throttleLoss: none };
        const { boost } = solveMatch(inputOf(losses ? one : bare)).figures;
        return boost[4]!;
      };
      return top('1.08') - top('1.0');
    };
    expect(changeAtTop('steep', true)).toBeLessThan(changeAtTop('falling', true));
    expect(changeAtTop('falling', true)).toBeLessThan(changeAtTop('flat', true));
    expect(Math.abs(changeAtTop('flat', false))).toBeLessThan(1);
  });
});
