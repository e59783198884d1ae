import { solveMatch } from '@pullbook/core/airpath';
import type { CombinationSheet } from '@pullbook/core/combination';
import { type FuelSupply, fuelNamed } from '@pullbook/core/fuel';
import { figureOf, percentFigure, speedFigure, toInside } from '@pullbook/core/quantity';
import type {
  Banded,
  Enquiry,
  ReachAnswer,
  ReachChange,
  ReachInput,
  ReachTarget,
  Rung,
  RungCurve,
  WhatIsLeft,
} from '@pullbook/core/reach';
import { remark, said } from '@pullbook/core/remark';
import type { LimitFinding } from '@pullbook/core/rule';
import { inventedInput } from '../match/test-bundle.ts';
import type { KeptEnquiry, ReachBundle } from '../reach-model.ts';

/** An invented target, its ladder and what is left: figures put down by hand, of no search. */
export const hp = (value: number): number => toInside(value, 'hp', 'power');
export const psi = (value: number): number => toInside(value, 'psi', 'gaugePressure');

export const TARGET: ReachTarget = {
  what: 'peak power',
  power: hp(520),
  atRpm: null,
  windowRpm: null,
  boostCap: null,
};

const banded = (value: number, low: number, high: number): Banded => ({
  value: hp(value),
  low: hp(low),
  high: hp(high),
});

export function sheetOf(fields: Record<string, string>): CombinationSheet {
  const sheet: CombinationSheet = { schemaVersion: 1, name: 'invented', sections: {} };
  for (const [path, text] of Object.entries(fields)) {
    const [section, field] = path.split('.') as ['drive', string];
    sheet.sections[section] = {
      ...sheet.sections[section],
      [field]: { text, value: null, kind: null, origin: 'data sheet', uncertainty: null, note: '' } as never,
    };
  }
  return sheet;
}

const gasoline = (() => {
  const fuel = fuelNamed('gasoline');
  if (!fuel.ok) throw new Error(fuel.remarks[0]?.message);
  return fuel.value;
})();

const SUPPLY: FuelSupply = {
  fuel: gasoline,
  lambda: 0.82,
  injectors: {
    count: 6,
    flow: toInside(65, 'lb/h', 'massFlow'),
    ratedDensity: gasoline.density,
    ratedPressure: 300_000,
    deadTime: null,
  },
  rail: { pressure: 300_000, reference: 'manifold' },
  pump: null,
  lineDiameter: null,
  mixes: 'port',
  assumptions: [
    remark('note', 'lambda-assumed', 'The mixture is not known: λ 0.82 is taken, usual under boost.'),
  ],
};

function curveOf(blowerPulley: number, share: number): RungCurve {
  const input = driven(blowerPulley);
  const { engineSpeedRpm, figures } = solveMatch(input);
  const value = [...figures.brakePower];
  return {
    engineSpeedRpm,
    power: { value, low: value.map((one) => one * (1 - share)), high: value.map((one) => one * (1 + share)) },
    boost: {
      value: [...figures.boost],
      low: [...figures.boost].map((one) => one * (1 - share)),
      high: [...figures.boost].map((one) => one * (1 + share)),
    },
    map: {
      correctedFlow: [...figures.correctedFlow],
      pressureRatio: [...figures.pressureRatio],
      state: engineSpeedRpm.map(() => 'on the map'),
    },
    airFlow: [...figures.airFlow],
    fuelFlow: [...figures.airFlow].map((one) => one / (0.82 * 14.6)),
    impellerSpeedRpm: [...figures.impellerSpeedRpm],
  };
}

const driven = (blowerPulley: number) => {
  const input = inventedInput();
  return {
    ...input,
    drive: { ...input.drive, blowerPulleyDiameter: blowerPulley, pulleyRatio: 0.165 / blowerPulley },
  };
};

export const IMPELLER: LimitFinding = {
  id: 'impellerSpeed',
  ruleId: 'V40',
  value: 51_233,
  threshold: 52_000,
  kind: 'engineSpeed',
  stay: 'below',
  margin: 1 - 51_233 / 52_000,
  engineSpeedRpm: 6900,
  binds: true,
  label: 'Impeller speed',
  source: 'the sheet (data sheet)',
  said: said`At ${speedFigure(6900)} the impeller turns ${speedFigure(51_233)}, at most ${speedFigure(52_000)} are allowed`,
};

export const INJECTORS: LimitFinding = {
  id: 'injectors',
  ruleId: 'V17',
  value: 0.91,
  threshold: 0.85,
  kind: 'ratio',
  stay: 'below',
  margin: 1 - 0.91 / 0.85,
  engineSpeedRpm: 6500,
  binds: false,
  label: 'Injectors',
  source: 'common practice, no source',
  said: said`The injectors are open for ${percentFigure(0.91)} of the time, at most ${percentFigure(0.85)} is usual: fit larger ones.`,
};

export const RING_GAP: LimitFinding = {
  id: 'ringGap',
  ruleId: 'V45',
  value: 0.000_35,
  threshold: 0.000_4,
  kind: 'length',
  stay: 'above',
  margin: 0.35 / 0.4 - 1,
  engineSpeedRpm: null,
  binds: false,
  label: 'Ring gap',
  source: 'common practice, no source',
  said: said`The top ring's gap is ${figureOf(0.000_35, 'length', { decimals: 2, units: { us: 'mm', si: 'mm' } })}, at least ${figureOf(0.000_4, 'length', { decimals: 2, units: { us: 'mm', si: 'mm' } })} is usual at this boost.`,
};

export const PULLEY: ReachChange = {
  part: 'pulley',
  said: said`Blower pulley ${figureOf(0.08, 'length', { units: { us: 'mm', si: 'mm' }, decimals: 0 })} in place of ${figureOf(0.084, 'length', { units: { us: 'mm', si: 'mm' }, decimals: 0 })}`,
  edits: [{ section: 'drive', field: 'blowerPulleyDiameter', text: '80 mm' }],
  clears: [],
  cost: 1,
  ground: 'scaled from your data',
  from: said`the match fitted to 2 boosted pulls`,
};

export const CAM: ReachChange = {
  part: 'breathing',
  said: said`Longer cam`,
  edits: [],
  clears: [],
  cost: 3,
  ground: 'measured by you',
  from: said`what longer cam, 84 mm gained over base cam, 84 mm`,
};

export function rung(changes: Partial<Rung> = {}): Rung {
  const pulley = 0.08;
  return {
    id: '80-mm',
    changes: [PULLEY],
    buildId: 'present',
    made: {
      match: { input: driven(pulley), spread: [] },
      sheet: sheetOf({ 'drive.blowerPulleyDiameter': '80 mm', 'cam.name': 'base cam' }),
      supply: SUPPLY,
    },
    reached: banded(528, 505.3, 550.6),
    peakPower: { ...banded(528, 505.3, 550.6), atRpm: 6500 },
    highestBoost: { value: psi(11.2), low: psi(10.6), high: psi(11.8), atRpm: 6500 },
    chance: 0.836,
    reaches: true,
    cost: { total: 1, highest: 1 },
    bindsFirst: IMPELLER,
    limits: [INJECTORS, IMPELLER, RING_GAP],
    curve: curveOf(pulley, 0.04),
    fuelEffect: null,
    ground: 'scaled from your data',
    assumptions: [remark('note', 'slip-assumed', 'Slip of 1 % is taken: usual of ribbed belts.')],
    ...changes,
  };
}

export const NOW_RUNG: Rung = rung({
  id: 'now-as-it-is',
  changes: [],
  made: {
    match: { input: driven(0.084), spread: [] },
    sheet: sheetOf({ 'drive.blowerPulleyDiameter': '84 mm', 'cam.name': 'base cam' }),
    supply: SUPPLY,
  },
  reached: banded(486, 470, 502),
  peakPower: { ...banded(486, 470, 502), atRpm: 6500 },
  highestBoost: { value: psi(10.4), low: psi(10), high: psi(10.8), atRpm: 6500 },
  chance: 0,
  reaches: false,
  cost: { total: 0, highest: 0 },
  curve: curveOf(0.084, 0.03),
  ground: 'measured by you',
});

const LEFT: WhatIsLeft = {
  buildId: 'present',
  name: 'invented blower',
  most: {
    overallRatio: 7.536,
    blowerPulleyDiameter: 0.078_82,
    peakPower: { ...banded(524, 501, 547), atRpm: 6500 },
  },
  buyable: { blowerPulleyDiameter: 0.08, peakPower: { ...banded(519, 497, 541), atRpm: 6500 } },
  stoppedBy: { ...IMPELLER, value: 52_000, margin: 0 },
  stops: [{ limit: { ...IMPELLER, value: 52_000, margin: 0 }, overallRatio: 7.536, peakPower: hp(524) }],
  curve: curveOf(0.0788, 0.04),
};

export const both = rung({
  id: '80-mm-and-cam',
  changes: [PULLEY, CAM],
  reached: banded(548, 520.2, 575),
  peakPower: { ...banded(548, 520.2, 575), atRpm: 6500 },
  chance: 0.975,
  cost: { total: 4, highest: 3 },
});

export function answerOf(changes: Partial<ReachAnswer> = {}): ReachAnswer {
  return {
    target: TARGET,
    feasible: true,
    now: NOW_RUNG,
    rungs: [rung(), both],
    left: [LEFT],
    reason: null,
    leastRemedy: null,
    remedies: [],
    searched: { combinations: 4812, solved: 960 },
    remarks: [],
    ...changes,
  };
}

/** Only what a view reads of the input is there. */
export function bundleOf(changes: Partial<ReachBundle> = {}): ReachBundle {
  const input = {
    target: TARGET,
    standard: { id: 'sae-j1349', factor: 1.01 },
    builds: [
      {
        id: 'present',
        name: 'invented blower',
        isPresent: true,
        match: { input: driven(0.084), spread: [] },
        fit: { pullIds: ['p1', 'p2'], restsOn: ['p1', 'p2'] },
      },
    ],
    baseline: inventedInput().baseline,
    measuredNow: { power: hp(485), pullIds: ['p1', 'p2'] },
    breathing: [{ from: CAM.from, pullIds: ['p5'] }],
    supply: SUPPLY,
    draws: 500,
    seed: 1,
  } as unknown as ReachInput;
  return {
    combinationId: 'base-84',
    name: 'base cam, 84 mm',
    combination: 0,
    isInvented: true,
    asked: {
      power: '520 hp',
      what: 'peak power',
      at: null,
      window: null,
      boostCap: null,
      without: [],
      correction: 'sae-j1349',
    },
    input,
    measured: {
      pullIds: ['p1', 'p2'],
      engineSpeedRpm: [4000, 5000, 6000, 6500],
      power: [hp(280), hp(380), hp(460), hp(485)],
      boost: [psi(4), psi(6), psi(9), psi(10.4)],
    },
    near: [
      {
        combinationId: 'cam-84',
        name: 'longer cam, 84 mm',
        pullIds: ['p5', 'p6', 'p7'],
        power: hp(523),
        isSameEngine: true,
        side: 'above',
        sheet: sheetOf({ 'drive.blowerPulleyDiameter': '84 mm', 'cam.name': 'longer cam' }),
      },
      {
        combinationId: 'base-80',
        name: 'base cam, 80 mm',
        pullIds: ['p3'],
        power: hp(503),
        isSameEngine: true,
        side: 'below',
        sheet: sheetOf({ 'drive.blowerPulleyDiameter': '80 mm', 'cam.name': 'base cam' }),
      },
    ],
    sources: [
      { kind: 'pull', id: 'p1', name: 'boosted 1' },
      { kind: 'pull', id: 'p2', name: 'boosted 2' },
      { kind: 'pull', id: 'p5', name: 'cam 1' },
      { kind: 'pull', id: 'na-1', name: 'alone 1' },
      { kind: 'pull', id: 'na-2', name: 'alone 2' },
      { kind: 'combination', id: 'cam-84', name: 'longer cam, 84 mm' },
      { kind: 'combination', id: 'base-80', name: 'base cam, 80 mm' },
    ],
    remarks: [],
    ...changes,
  };
}

/** The same as it is kept: nothing of what it was made of. */
export function keptOf(answer: ReachAnswer = answerOf(), changes: Partial<Enquiry> = {}): KeptEnquiry {
  const without = (one: Rung): Rung => ({ ...one, made: null });
  return {
    enquiry: {
      id: 'enquiry-1',
      question: '',
      combinationId: 'base-84',
      asked: bundleOf().asked,
      answer: {
        combinationName: 'base cam, 84 mm',
        standard: { id: 'sae-j1349', factor: 1.01 },
        air: { pressure: 98_000, temperature: 300 },
        answer: { ...answer, now: without(answer.now), rungs: answer.rungs.map(without) },
        near: [
          {
            combinationId: 'cam-84',
            name: 'longer cam, 84 mm',
            pullIds: ['p5', 'p6', 'p7'],
            power: hp(523),
            isSameEngine: true,
            side: 'above',
            separates: {
              '80-mm': [
                {
                  section: 'drive',
                  field: 'blowerPulleyDiameter',
                  label: 'Drive, blower pulley',
                  before: '84 mm',
                  after: '80 mm',
                  packageName: null,
                },
              ],
            },
          },
        ],
      },
      pullIds: ['na-1', 'na-2', 'p1', 'p2'],
      madeBy: { version: '0.1.0', seed: 1 },
      became: [],
      cards: [],
      at: '2026-11-26T08:00:00Z',
      ...changes,
    },
    combination: 0,
    isInvented: true,
    sources: bundleOf().sources,
    remarks: [],
  };
}
