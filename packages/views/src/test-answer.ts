import { type Combination, type CombinationSheet, readSheet } from '@pullbook/core/combination';
import type {
  ComparedChannel,
  ComparedCombination,
  Comparison,
  Gain,
  PeakGain,
} from '@pullbook/core/compare';
import {
  defaultRecipe,
  OPEN_AUDIENCE,
  type Peak,
  PLAIN_TREATMENT,
  type Pull,
  type PullView,
} from '@pullbook/core/pull';
import { absolutePressure, temperature, toInside } from '@pullbook/core/quantity';
import type { TrialAnswer } from '@pullbook/core/trial';
import { type InventedBand, NODES, withBand } from './test-band.ts';

/** What a test says of one combination; figures in hp and psi so that the sentences can be read off. */
export interface InventedCombination {
  shortName: string;
  pulls: number;
  power: (rpm: number) => number;
  boost?: (rpm: number) => number;
  supercharged?: boolean;
  repeatSpread?: number | null;
  stillClimbing?: boolean;
  /** Verdict and band of its gain over A, in hp; missing: none. */
  sure?: InventedBand;
}

/** An answer made by hand, without core's comparison: what a view is given and nothing else. */
export function inventedAnswer(
  combinations: InventedCombination[],
  more: {
    state?: TrialAnswer['state'];
    window?: [number, number];
    empty?: number[];
    peakGains?: PeakGain[];
  } = {},
): TrialAnswer {
  const window = more.window ?? [3000, 6500];
  const keyed = combinations.map((item, index) => ({ ...item, key: 'ABCDEFGHIJ'[index]! }));
  const pulls = keyed.flatMap((item) =>
    Array.from({ length: item.pulls }, (_, order) => pullOf(item.key, order)),
  );
  const pulled = keyed.filter((item) => item.pulls > 0);
  const compared = pulled.map((item) => comparedOf(item, window, more.empty ?? []));
  const missing = keyed.filter((item) => item.pulls === 0);
  const state = more.state ?? (missing.some(({ key }) => key === 'A') ? 'no baseline' : 'answered');
  const [first] = compared;
  const gains =
    state === 'answered' && first
      ? compared.slice(1).map((changed) =>
          withBand(gainOf(first, changed, window), keyed.find(({ key }) => key === changed.key)!.sure, {
            baseline: first,
            changed,
            window,
          }),
        )
      : [];
  const comparison: Comparison | null =
    compared.length === 0
      ? null
      : {
          correction: { asked: 'sae-j1349', standard: 'sae-j1349', factor: null, reached: true },
          binWidthRpm: 100,
          engineSpeedRpm: NODES,
          commonWindowRpm: [3000, 6500],
          averagesWindowRpm: window,
          combinations: compared,
          gains,
          peakGains: more.peakGains ?? [],
          trends: keyed.flatMap(({ sure }) => sure?.trends ?? []),
          conditions: [
            {
              id: 'day',
              label: 'Day',
              values: { A: '2026-03-14', B: '2026-03-14' },
              state: 'alike',
              why: 'a limit',
            },
            {
              id: 'oil',
              label: 'Oil at the start',
              values: { A: '82 °C', B: '88 °C' },
              state: 'differs',
              why: 'a limit',
            },
            {
              id: 'cell',
              label: 'Cell',
              values: { A: 'cell 1', B: 'cell 1' },
              state: 'alike',
              why: 'a limit',
            },
          ],
          remarks: [],
        };
  return {
    trial: {
      id: 'trial',
      question: 'What does it do?',
      kind: state === 'survey' ? 'survey' : 'comparison',
      combinations: keyed.map(({ key, shortName }) => ({
        key,
        combinationId: `combination ${key}`,
        shortName,
      })),
      pulls: pulls.map(({ id }) => ({ pullId: id, key: id[0]!, role: 'counted', reason: null })),
      correction: 'sae-j1349',
      averagesWindowRpm: null,
      remark: '',
      audience: OPEN_AUDIENCE,
      createdAt: '2026-03-14T12:00:00+01:00',
      invented: false,
    },
    state,
    missing: missing.map(({ key, shortName }) => ({ key, combinationId: `combination ${key}`, shortName })),
    comparison,
    views: new Map(
      pulls.map((pull) => [pull.id, viewOf(pull, keyed.find(({ key }) => key === pull.id[0])!)]),
    ),
    pulls: new Map(pulls.map((pull) => [pull.id, pull])),
    combinations: new Map(keyed.map((item) => [`combination ${item.key}`, combinationOf(item)])),
    changes: {
      B: [
        {
          section: 'cam',
          field: 'durationIntake',
          label: 'Cam, intake duration',
          before: '242 deg',
          after: '254 deg',
          packageName: null,
        },
      ],
    },
    badges: [],
    findings: [],
    explanations: [],
    predictions: [],
    remarks: [],
  };
}

function comparedOf(
  item: InventedCombination & { key: string },
  window: [number, number],
  empty: number[],
): ComparedCombination {
  const power = NODES.map((rpm) => (empty.includes(rpm) ? Number.NaN : toInside(item.power(rpm), 'hp')));
  const torque = power.map((watt, node) => (watt * 60) / (2 * Math.PI * NODES[node]!));
  const channels = new Map<'power' | 'torque' | 'boost', ComparedChannel>([
    ['power', channelOf(item, power)],
    ['torque', channelOf(item, torque)],
  ]);
  if (item.boost)
    channels.set(
      'boost',
      channelOf(
        item,
        NODES.map((rpm) => toInside(item.boost!(rpm), 'psi', 'gaugePressure')),
      ),
    );
  return {
    key: item.key,
    combinationId: `combination ${item.key}`,
    pullIds: Array.from({ length: item.pulls }, (_, order) => `${item.key}${order + 1}`),
    channels,
    peakPower: peakOf(item),
    peakTorque: null,
    averages: new Map([['power', meanIn(window, power)]]),
    repeatSpread: item.repeatSpread === undefined ? (item.pulls > 1 ? 0.004 : null) : item.repeatSpread,
    peakPowerBand: item.sure
      ? [toInside(item.power(6500) - 6, 'hp'), toInside(item.power(6500) + 6, 'hp')]
      : null,
  };
}

const channelOf = (item: { key: string; pulls: number }, mean: Float64Array): ComparedChannel => ({
  mean,
  pulls: Array.from({ length: item.pulls }, (_, order) => ({
    pullId: `${item.key}${order + 1}`,
    values: mean,
  })),
});

function gainOf(before: ComparedCombination, after: ComparedCombination, window: [number, number]): Gain {
  const difference = (meaning: 'power' | 'torque' | 'boost') =>
    NODES.map(
      (_, node) =>
        (after.channels.get(meaning)?.mean[node] ?? Number.NaN) -
        (before.channels.get(meaning)?.mean[node] ?? Number.NaN),
    );
  const power = difference('power');
  const meanPower = meanIn(window, power);
  const top = difference('boost').at(-1)!;
  const ends = (pick: (...values: number[]) => number) => {
    const value = pick(...power.filter(Number.isFinite));
    return { power: value, atRpm: NODES[power.indexOf(value)]! };
  };
  return {
    baselineKey: before.key,
    changedKey: after.key,
    power,
    torque: difference('torque'),
    meanPower,
    meanPowerRatio: meanPower / before.averages.get('power')!,
    meanTorque: 0,
    meanBoost: null,
    topBoost: Number.isFinite(top) ? top : null,
    largest: ends(Math.max),
    smallest: ends(Math.min),
    crossoversRpm: [],
    band: null,
    verdict: null,
  };
}

function meanIn([low, high]: [number, number], values: Float64Array): number {
  const kept = [...values].filter(
    (value, node) => NODES[node]! >= low && NODES[node]! <= high && Number.isFinite(value),
  );
  return kept.reduce((sum, value) => sum + value, 0) / kept.length;
}

function peakOf(item: InventedCombination): Peak {
  return {
    value: toInside(item.power(6500), 'hp'),
    atRpm: 6500,
    valueSpread: null,
    atRpmSpread: null,
    stillClimbing: item.stillClimbing ?? false,
  };
}

function pullOf(key: string, order: number): Pull {
  return {
    id: `${key}${order + 1}`,
    name: `Pull ${key}${order + 1}`,
    combinationId: `combination ${key}`,
    setUpId: `set-up ${key}`,
    sessionId: 'session',
    orderInSession: order + 1,
    recordedAt: '2026-03-14T10:42:00+01:00',
    cell: 'cell 1',
    operator: null,
    form: 'curve',
    channels: [],
    summary: null,
    weather: {
      pressure: absolutePressure(98_700),
      temperature: temperature(298.15),
      humidity: null,
      altitude: 210,
    },
    carried: { standard: 'observed', factor: 1 },
    sweep: { momentOfInertia: null, inertiaCompensated: 'unknown' },
    tune: {},
    places: { boostTap: 'manifold' },
    notes: [],
    events: [],
    outcome: 'completed',
    treatment: PLAIN_TREATMENT,
    audience: OPEN_AUDIENCE,
    origin: 'measured',
    fileHash: null,
    invented: false,
  };
}

function viewOf(pull: Pull, item: InventedCombination): PullView {
  return {
    pullId: pull.id,
    recipe: defaultRecipe('sae-j1349'),
    correction: { asked: 'sae-j1349', standard: 'sae-j1349', factor: 1.021, reached: true },
    window: {
      fromRow: 0,
      toRow: 99,
      direction: 'rising',
      windowRpm: [3000, 6500],
      sweepRateRpmPerS: 300,
      cuts: [],
    },
    spikes: [],
    curve: null,
    peakPower: peakOf(item),
    peakTorque: null,
    remarks: [],
  };
}

function combinationOf(item: InventedCombination & { key: string }): Combination {
  const plain = {
    schemaVersion: 1,
    name: item.shortName.trim() || 'unnamed',
    shortBlock: { configuration: 'straight six', cylinders: 6, bore: '96 mm', stroke: '88 mm' },
    fuel: { name: 'gasoline' },
    ...(item.supercharged ? { supercharger: { type: 'centrifugal' } } : {}),
  };
  const read = readSheet(plain);
  if (!read.ok) throw new Error(read.remarks[0]?.message);
  const sheet: CombinationSheet = read.value;
  return {
    id: `combination ${item.key}`,
    engineId: 'engine',
    name: item.shortName,
    sheet,
    revision: 1,
    madeFromId: null,
    packageIds: [],
    createdAt: '',
    invented: false,
  };
}
