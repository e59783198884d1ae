import { type Baseline, type FittedMap, matchInputOf } from '../airpath/index.ts';
import { dryAir, inventedBaseline, nodesOf, ratedMap } from '../airpath/match/match-input.testing.ts';
import { type CombinationSheet, readSheet } from '../combination/index.ts';
import { fuelNamed, fuelSupplyOf } from '../fuel/index.ts';
import { said } from '../remark/index.ts';
import type { ReachBuild, ReachInput } from './model.ts';

const AIR = dryAir(99_000, 298.15);

/** An invented 5.7 litre engine with a wheel of 152 mm on a ribbed belt. */
export const PLAIN_SHEET = {
  schemaVersion: 1,
  name: 'invented eight',
  shortBlock: { cylinders: 8, bore: '101.6 mm', stroke: '88.4 mm', compressionRatio: '9.5:1' },
  fuelSystem: {
    type: 'port injection',
    injectors: 8,
    injectorFlow: '80 lb/h',
    injectorFlowPressure: '3 bar',
    fuelPressure: '3 bar',
    fuelReference: 'manifold',
  },
  fuel: { name: 'gasoline', researchOctane: 98, motorOctane: 88 },
  ignition: { engineSpeedLimit: '6700 rpm', overRevMargin: '200 rpm' },
  supercharger: {
    type: 'centrifugal',
    stepUp: 3.5,
    maximumImpellerSpeed: '52000 rpm',
    bypassAtFullThrottle: 'shut',
  },
  drive: {
    type: 'ribbed belt',
    crankPulleyDiameter: '165 mm',
    blowerPulleyDiameter: '100 mm',
    beltRibs: 8,
    slip: '1 %',
  },
  cooler: {
    type: 'air to water',
    effectiveness: '75 %',
    pressureLoss: '4 kPa',
    pressureLossFlow: '0.5 kg/s',
    coolantTemperature: '18 °C',
  },
};

export function sheetOf(changes: Record<string, unknown> = {}): CombinationSheet {
  const read = readSheet({ ...PLAIN_SHEET, ...changes });
  if (!read.ok) throw new Error(read.remarks[0]?.message);
  return read.value;
}

export const BASELINE: Baseline = inventedBaseline(AIR, nodesOf(3000, 6700, 38));

/** A build of a sheet, as whoever holds a book would make it ready. */
export function buildOf(
  sheet: CombinationSheet,
  {
    id = 'present',
    map = ratedMap(),
    change = null,
  }: Partial<Pick<ReachBuild, 'id' | 'change'>> & { map?: FittedMap } = {},
): ReachBuild {
  const madeOf = { sheet, baseline: BASELINE, map, air: AIR };
  const ready = matchInputOf(madeOf);
  if (!ready.ok) throw new Error(ready.remarks[0]?.message);
  const { input, spread } = ready.value;
  return {
    id,
    name: id,
    isPresent: change === null,
    match: { input, spread },
    fit: null,
    madeOf,
    sheet,
    change,
    assumptions: [],
  };
}

/** The engine without its supercharger. */
export function aloneBuild(): ReachBuild {
  const { supercharger: _, drive: __, cooler: ___, ...sections } = sheetOf().sections;
  return {
    id: 'alone',
    name: 'without supercharger',
    isPresent: false,
    match: null,
    fit: null,
    madeOf: null,
    sheet: { ...sheetOf(), sections },
    change: {
      part: 'supercharger',
      said: said`Supercharger taken off`,
      edits: [],
      clears: ['supercharger', 'drive', 'cooler'],
      cost: 1,
      ground: 'measured by you',
      from: said`the pull without it`,
    },
    assumptions: [],
  };
}

const provenance = { kind: 'common practice', source: 'common practice, no source' } as const;

export const fuelOf = (name: string) => {
  const fuel = fuelNamed(name);
  if (!fuel.ok) throw new Error(fuel.remarks[0]?.message);
  return { id: name, fuel: fuel.value, cost: 1 as const, from: provenance };
};

/** A search on the invented engine; change what a test is about. */
export function reachInput(changes: Partial<ReachInput> = {}, sheet = sheetOf()): ReachInput {
  return {
    target: { what: 'peak power', power: 480e3, atRpm: null, windowRpm: null, boostCap: null },
    standard: { id: 'observed', factor: 1 },
    builds: [buildOf(sheet)],
    baseline: BASELINE,
    measuredNow: null,
    blowerPulleys: Array.from({ length: 31 }, (_, place) => ({ diameter: 0.06 + 0.002 * place, cost: 1 })),
    crankPulleys: [],
    stepUps: [],
    coolers: [],
    fuels: [],
    breathing: [],
    speedLimits: [],
    injectors: [],
    pumps: [],
    beltRibs: [],
    supply: fuelSupplyOf(sheet, { induction: 'centrifugal' }),
    thresholds: {},
    binding: { fuelAndCompression: false, spark: false, belt: false },
    mostChanges: 2,
    mostRungs: 12,
    draws: 100,
    seed: 7,
    ...changes,
  };
}
