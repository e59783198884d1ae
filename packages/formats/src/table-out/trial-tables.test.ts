import { readSheet } from '@pullbook/core/combination';
import { type Channel, type ChannelMeaning, OPEN_AUDIENCE, type Pull } from '@pullbook/core/pull';
import { answerTrial, type TrialAnswer } from '@pullbook/core/trial';
import { expect, test } from 'vitest';
import { inventedChannel, inventedPull } from '../../../core/src/pull/invented-pull.testing.ts';
import type { OutTable } from './model.ts';
import { tablesToJson } from './tables-to-json.ts';
import { type TablesAsked, trialTables } from './trial-tables.ts';

const AT = '2026-03-14T10:42:00+01:00';
const SPEEDS = [3000, 3250, 3500, 3750, 4000];

const channel = (meaning: ChannelMeaning, values: number[], name = '', unit = ''): Channel => ({
  ...inventedChannel(meaning, values),
  name,
  unit,
});

/** Of one torque at every speed, without weather. */
const pull = (id: string, torque: number, more: Channel[] = []): Pull =>
  inventedPull(
    [
      channel('engineSpeed', SPEEDS),
      channel(
        'torque',
        SPEEDS.map(() => torque),
        'TQ 1',
      ),
      ...more,
    ],
    { id, name: `Run ${id}`, recordedAt: AT, weather: null },
  );

function answer(pulls: Pull[]): TrialAnswer {
  const sheet = readSheet({
    schemaVersion: 1,
    name: 'Base',
    shortBlock: { cylinders: 4, bore: '86 mm', stroke: '86 mm' },
    fuel: { name: 'petrol' },
  });
  if (!sheet.ok) throw new Error(sheet.remarks[0]!.message);
  const combination = (id: string) => ({
    id,
    engineId: 'e',
    name: id,
    sheet: sheet.value,
    revision: 1,
    madeFromId: null,
    packageIds: [],
    createdAt: AT,
    invented: true,
  });
  return answerTrial({
    trial: {
      id: 't',
      question: '=What does it add?',
      kind: 'comparison',
      combinations: [
        { key: 'A', combinationId: 'base', shortName: 'base' },
        { key: 'B', combinationId: 'other', shortName: 'longer' },
      ],
      pulls: pulls.map(({ id }) => ({
        pullId: id,
        key: id.startsWith('b') ? 'B' : 'A',
        role: id.endsWith('x') ? 'rejected' : 'counted',
        reason: id.endsWith('x') ? 'throttle lifted' : null,
      })),
      correction: 'observed',
      averagesWindowRpm: null,
      remark: '',
      audience: OPEN_AUDIENCE,
      createdAt: AT,
      invented: true,
    },
    combinations: [combination('base'), combination('other')],
    packages: [],
    pulls,
  });
}

const asked: TablesAsked = {
  sentence: 'B makes 10 % more.',
  verdicts: [],
  warnings: ['Not for publication'],
  system: 'si',
  decimalMark: '.',
  at: AT,
};

const noise = [2, Number.NaN, -1, 0.5, 3];
const PULLS = [
  pull('a', 300),
  pull('b', 330, [
    channel('throttle', [0.99, 1, 1, 1, 1]),
    channel('oilTemperature', [373.15, 373.15, 373.15, 373.15, 373.15]),
    { ...channel('other', noise, 'Knock', 'mV/g'), kind: 'ratio' },
  ]),
  pull('bx', 200),
];
const tables = trialTables(answer(PULLS), asked);
const rowsOf = (title: string, all: OutTable[] = tables) =>
  tablesToJson(all).tables.find((table) => table.title === title)!.rows;

test('figures are those worked by hand: 300 and 330 N·m at every speed from 3000 to 4000', () => {
  // 300 N·m at 3500 r/min, the mean speed: 300 × 2π × 3500 / 60 = 109.956 kW.
  const figures = rowsOf('Figures');
  const at = (figure: string, combination: string) =>
    figures.find((one) => one.figure === figure && one.combination === combination)!;
  expect(at('Average power over the window', 'A')).toMatchObject({ unit: 'kW', low: null });
  expect(at('Average power over the window', 'A').value).toBeCloseTo(109.955_743, 5);
  expect(at('Gain, share of the baseline', 'B').value).toBeCloseTo(10, 9);
  expect(at('Gain, share of the baseline', 'B').unit).toBe('%');
  // The power of one torque rises to the last row: no peak.
  expect(at('Highest power', 'B')).toMatchObject({ engineSpeedRpm: 4000, stillClimbing: 'yes' });
  expect(at('Average power over the window', 'A').stillClimbing).toBeNull();
  const [first, , last] = rowsOf('Speeds');
  expect(rowsOf('Speeds').map(({ engineSpeedRpm }) => engineSpeedRpm)).toEqual([3000, 3500, 4000]);
  expect(rowsOf('All speeds').map(({ engineSpeedRpm }) => engineSpeedRpm)).toEqual(SPEEDS);
  expect(first!.aPowerKw).toBeCloseTo(94.247_78, 5);
  expect(last!.bLessAPowerKw).toBeCloseTo(12.566_371, 5);
  expect(last!.bLessAPowerPercent).toBeCloseTo(10, 9);
  expect(last!.bLessATorqueNm).toBeCloseTo(30, 9);
  expect(first!.bOilTemperatureC).toBeCloseTo(100, 9);
});

test('a pull has its channels as read, each in the unit of its column; what is not understood stays as it is', () => {
  const { columns } = tables.find(({ title }) => title === 'Run b')!;
  expect(columns.map(({ title, unit }) => [title, unit])).toEqual([
    ['Engine speed', 'rpm'],
    ['Torque (TQ 1)', 'N·m'],
    ['Throttle', '%'],
    ['Oil', '°C'],
    ['Knock', 'mV/g'],
  ]);
  expect(rowsOf('Run b').map(({ throttlePercent }) => throttlePercent)).toEqual([99, 100, 100, 100, 100]);
  expect(rowsOf('Run b').map(({ other }) => other)).toEqual([2, null, -1, 0.5, 3]);
  const american = trialTables(answer(PULLS), { ...asked, system: 'us' });
  expect(rowsOf('Run b', american)[0]!.torqueLbFt).toBeCloseTo(330 / 1.355_817_948, 5);
});

test('everything that must be said with the figures is there', () => {
  const trial = new Map(rowsOf('Trial').map(({ what, value }) => [what, value]));
  expect(Object.fromEntries(trial)).toMatchObject({
    Question: '=What does it add?',
    Answer: 'B makes 10 % more.',
    'Power and torque by': 'observed',
    Pulls: '2 counted of 3',
    'Common window': '3000 to 4000 rpm',
    Data: 'invented',
    Caution: 'Not for publication',
  });
  // 4 × π/4 × 0.086² × 0.086 m³ = 1.998 229 L.
  const [base] = rowsOf('Combinations');
  expect(base).toMatchObject({ combination: 'A', countedPulls: 1, fuel: 'petrol' });
  expect(base!.displacementCm3).toBeCloseTo(1998.229, 2);
  expect(rowsOf('Pulls').find(({ name }) => name === 'Run bx')).toMatchObject({
    role: 'rejected',
    reason: 'throttle lifted',
    recordedAt: AT,
    table: 'Run bx',
  });
  expect(rowsOf('Conditions').length).toBeGreaterThan(0);
});

test('without a pull, and with a pull of the baseline only, there is what there is', () => {
  expect(trialTables(answer([]), asked).map(({ title }) => title)).toEqual(['Trial', 'Combinations']);
  const one = trialTables(answer([pull('a', 300)]), asked);
  expect(one.map(({ title }) => title)).toContain('Speeds');
  expect(rowsOf('Speeds', one)[0]).toEqual({
    engineSpeedRpm: 3000,
    aPowerKw: expect.closeTo(94.247_78, 5),
    aTorqueNm: 300,
  });
});
