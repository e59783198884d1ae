import { airState } from '@pullbook/core/air';
import {
  type Baseline,
  type CompressorMap,
  type FittedMap,
  fitMap,
  type MapPoint,
  type MatchInput,
  NO_LOSS,
} from '@pullbook/core/airpath';
import type { FittedMoves } from '@pullbook/core/fit';
import { blendOf } from '@pullbook/core/fuel';
import { absolutePressure, temperature } from '@pullbook/core/quantity';
import { remark, said } from '@pullbook/core/remark';
import type { MatchBundle, MatchedCombination } from '../match-model.ts';

const air = (() => {
  const state = airState({
    pressure: absolutePressure(98_000),
    temperature: temperature(300),
    humidity: { route: 'vapourPressure', pressure: absolutePressure(1200) },
    altitude: null,
  });
  if (!state.ok) throw new Error(state.remarks[0]?.message);
  return state.value;
})();

/** An invented compressor: parabolas whose head goes with the square of speed. Right of the middle every line falls. */
export function inventedCompressor(): CompressorMap {
  const points = [30, 38, 46, 52].flatMap((thousands): MapPoint[] => {
    const share = thousands / 52;
    return [0.42, 0.5, 0.58, 0.66, 0.74, 0.82, 0.9].map((place) => ({
      flow: 0.62 * share ** 1.1 * place,
      pressureRatio:
        1 + 1.25 * share ** 2 * (1 - 2.2 * Math.max(0, place - 0.5) ** 2 - 0.4 * (0.5 - place) ** 2),
      speedRpm: 1000 * thousands,
      efficiency: 0.77 - 0.9 * (place - 0.64) ** 2 - 0.03 * (1 - share),
    }));
  });
  return {
    id: 'invented-map',
    name: 'invented wheel',
    form: 'points',
    reference: { pressure: 100_000, temperature: 298.15 },
    geometry: { wheelExitDiameter: 0.124, wheelInletDiameter: 0.086, blades: 16, backsweep: 0.6 },
    points,
    leftEnd: 'surge',
    origin: 'data sheet',
    notes: 'Of no maker.',
    invented: true,
    createdAt: '2026-03-01T00:00:00Z',
  };
}

export function fittedCompressor(map: CompressorMap = inventedCompressor()): FittedMap {
  const fitted = fitMap(map);
  if (!fitted.ok) throw new Error(fitted.remarks[0]?.message);
  return fitted.value;
}

const NODES = Array.from({ length: 61 }, (_, node) => 3500 + 50 * node);

/** An invented engine of 3.8 litres. */
function inventedBaseline(): Baseline {
  const displacement = 3.8e-3;
  const airFlow = NODES.map(
    (rpm) => (0.97 - 0.16 * ((rpm - 5000) / 2000) ** 2) * air.density * displacement * (rpm / 120),
  );
  const frictionPower = NODES.map((rpm) => 26_000 * (rpm / 5000) ** 2);
  return {
    engineSpeedRpm: NODES,
    brakePower: airFlow.map((flow, node) => 1.32e6 * flow - frictionPower[node]!),
    airFlow,
    frictionPower,
    manifoldPressure: NODES.map((rpm) => 97_500 - 2500 * (rpm / 6500) ** 2),
    manifoldTemperature: NODES.map(() => 305),
    lambda: null,
    air,
    airBasis: 'fuel and mixture',
    origin: 'measured',
    pullIds: ['na-1', 'na-2'],
  };
}

export function inventedInput(changes: Partial<MatchInput> = {}): MatchInput {
  return {
    baseline: inventedBaseline(),
    displacement: 3.8e-3,
    compressionRatio: 9.5,
    air,
    gas: { specificHeat: 1006, gasConstant: 288 },
    compressor: { map: FITTED, headScale: 1, efficiencyShift: 0, constantEfficiency: null },
    drive: {
      kind: 'ribbed belt',
      pulleyRatio: 165 / 84,
      stepUp: 3.6,
      slip: 0.01,
      mechanicalEfficiency: 0.95,
      crankPulleyDiameter: 0.165,
      blowerPulleyDiameter: 0.084,
      wrapAngle: 2.9,
      ribs: 8,
      maximumImpellerSpeedRpm: 52_000,
      engineSpeedLimitRpm: 6700,
      overRevMarginRpm: 200,
    },
    inletLoss: { pressureDifference: 1500, atFlow: 0.35, atDensity: 1.15 },
    pipeLoss: NO_LOSS,
    bypass: { state: 'shut', leak: 0 },
    cooler: {
      by: 'water',
      effectiveness: 0.75,
      loss: { pressureDifference: 4000, atFlow: 0.35, atDensity: 1.9 },
      coolantTemperature: 295,
    },
    throttleLoss: NO_LOSS,
    tap: 'manifold',
    charge: { heatFactor: 1, evaporationCooling: 0, fuelVapour: 0 },
    swallowing: {
      scale: 1,
      exhaustPressureRatio: 1.06,
      pressureTermRatio: 1.4,
      heatExponent: 0.5,
      breathing: null,
    },
    work: { factor: 1, gasExchange: true, frictionRise: 0 },
    ...changes,
  };
}

const FITTED = fittedCompressor();
const GASOLINE = blendOf([{ substance: 'gasoline', volumeShare: 1 }]);

function combination(changes: Partial<MatchedCombination> = {}): MatchedCombination {
  return {
    key: 'A',
    combinationId: 'blown-base',
    name: 'base cam',
    combination: 0,
    input: inventedInput(),
    spread: [
      { key: 'baseline', parts: ['baselinePower'], factor: [[0.006]] },
      { key: 'map of blower', parts: ['head'], factor: [[0.03]] },
      { key: 'efficiency of blower', parts: ['efficiency'], factor: [[0.02]] },
      { key: 'drive', parts: ['slip'], factor: [[0.006]] },
    ],
    fit: null,
    measured: null,
    supply: { fuel: GASOLINE, behind: GASOLINE, mixes: 'port' },
    assumptions: [
      remark(
        'note',
        'mechanical-efficiency-assumed',
        said`The gears take ${'5 %'}: common practice, no source.`,
      ),
    ],
    findings: [],
    ...changes,
  };
}

/** A blown engine, and the same with a cam by which it swallows 8 % more above 5,000 r/min. */
export function inventedBundle(changes: Partial<MatchBundle> = {}): MatchBundle {
  const breathing = NODES.map((rpm) => 1 + 0.08 * Math.min(1, Math.max(0, (rpm - 4500) / 1000)));
  const base = inventedInput();
  const measuredNodes = NODES.filter((rpm) => rpm % 100 === 0);
  return {
    trialId: 'trial-1',
    title: 'What does the longer cam add at the same pulley?',
    silent: [],
    combinations: [
      combination({
        measured: {
          pullIds: ['p1', 'p2'],
          engineSpeedRpm: measuredNodes,
          power: measuredNodes.map((rpm) => 330_000 * (rpm / 6500)),
          torque: measuredNodes.map(() => 485),
          boost: measuredNodes.map((rpm) => 68_000 * (rpm / 6500) ** 2),
          chargeTemperature: null,
        },
        fit: FIT,
      }),
      combination({
        key: 'B',
        combinationId: 'blown-longer',
        name: '12° longer cam',
        combination: 1,
        input: { ...base, swallowing: { ...base.swallowing, breathing } },
      }),
    ],
    left: [
      {
        key: 'C',
        name: 'without supercharger',
        reason: remark('note', 'no-supercharger', 'It has no supercharger: there is nothing to match.'),
      },
    ],
    remarks: [],
    ...changes,
  };
}

const FIT: MatchedCombination['fit'] = {
  pullIds: ['p1', 'p2'],
  ground: {
    baseline: 'baseline',
    baselinePullIds: [],
    map: 'map of blower',
    coolers: [],
    overallRatios: [7.07, 7.07],
  },
  parameters: [
    { id: 'headScale', prior: { value: 1, spread: 0.04 }, value: 1.021, spread: 0.011, from: ['boost'] },
    { id: 'slip', prior: { value: 0.01, spread: 0.006 }, value: 0.01, spread: 0.006, from: [] },
  ],
  restsOn: ['p1', 'p2'],
  lostWork: 0,
  axis: { lowRpm: 3000, highRpm: 6500, overallRatio: 7.07 },
  own: { by: {} as FittedMoves['by'], lines: [] },
  carried: { by: {} as FittedMoves['by'], lines: [] },
  key: 'fit',
  residuals: [
    {
      pullId: 'p1',
      figure: 'boost',
      engineSpeedRpm: [4000, 5000],
      measured: [30_000, 45_000],
      matched: [30_300, 44_600],
      rms: 0.009,
    },
    {
      pullId: 'p2',
      figure: 'boost',
      engineSpeedRpm: [4000, 5000],
      measured: [30_000, 45_000],
      matched: [30_300, 44_600],
      rms: 0.013,
    },
    {
      pullId: 'p1',
      figure: 'manifoldTemperature',
      engineSpeedRpm: [4000],
      measured: [320],
      matched: [323],
      rms: 3,
    },
  ],
  readings: [
    {
      id: 'slip',
      strength: 'possible',
      text: said`Boost sags at the top by ${'2 %'}.`,
      wouldSettle: said`A pick-up on the impeller's shaft would settle it.`,
    },
  ],
  remarks: [remark('note', 'head-or-slip', 'Head and slip cannot be told apart without shaft speed.')],
};
