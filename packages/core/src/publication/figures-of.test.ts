import { expect, test } from 'vitest';
import { OPEN_AUDIENCE } from '../pull/index.ts';
import { inventedChannel, inventedPull } from '../pull/invented-pull.testing.ts';
import { answerTrial, type Trial } from '../trial/index.ts';
import { figuresOf } from './figures-of.ts';

const SPEEDS = [3000, 3500, 4000, 4500, 5000];
/** Of one torque at every speed, so that all can be worked by hand: power is torque times 2π times turns a second. */
const flat = (id: string, torque: number, boost: number[] | null = null) =>
  inventedPull(
    [
      inventedChannel('engineSpeed', SPEEDS),
      inventedChannel(
        'torque',
        SPEEDS.map(() => torque),
      ),
      ...(boost ? [inventedChannel('boost', boost)] : []),
    ],
    { id, name: id },
  );

const trial = (kind: Trial['kind']): Trial => ({
  id: 't',
  question: 'What does it add?',
  kind,
  combinations: [
    { key: 'A', combinationId: 'a', shortName: 'before' },
    { key: 'B', combinationId: 'b', shortName: 'after' },
  ],
  pulls: [
    { pullId: 'a1', key: 'A', role: 'counted', reason: null },
    { pullId: 'b1', key: 'B', role: 'counted', reason: null },
  ],
  correction: 'observed',
  averagesWindowRpm: null,
  remark: '',
  audience: OPEN_AUDIENCE,
  createdAt: '2026-03-14T10:00:00Z',
  invented: true,
});

const answer = (kind: Trial['kind'] = 'comparison') =>
  answerTrial({
    trial: trial(kind),
    combinations: [],
    packages: [],
    pulls: [flat('a1', 300), flat('b1', 330, [40e3, 55e3, 60e3, Number.NaN, 58e3])],
  });

test('figures are those worked by hand: 300 and 330 N·m at every speed from 3000 to 5000', () => {
  const said = figuresOf(answer());
  const at = (id: string, key: string) => said.find((one) => one.id === id && one.key === key);
  // The mean speed is 4000 r/min, 66.67 turns a second: 300 N·m are 125.66 kW on average, 157.08 kW at 5000.
  expect(at('averagePower', 'A')).toMatchObject({
    kind: 'power',
    low: null,
    high: null,
    engineSpeedRpm: null,
  });
  expect(at('averagePower', 'A')!.value).toBeCloseTo(125_663.706, 2);
  expect(at('peakPower', 'A')).toMatchObject({ engineSpeedRpm: 5000 });
  expect(at('peakPower', 'A')!.value).toBeCloseTo(157_079.633, 2);
  expect(at('peakTorque', 'B')!.value).toBeCloseTo(330, 9);
  expect(at('meanGain', 'B')!.value).toBeCloseTo(12_566.371, 2);
  expect(at('meanGainRatio', 'B')!.value).toBeCloseTo(0.1, 12);
  expect(at('highestBoost', 'A')).toBeUndefined();
  expect(at('highestBoost', 'B')).toEqual({
    id: 'highestBoost',
    key: 'B',
    kind: 'gaugePressure',
    value: 60e3,
    low: null,
    high: null,
    engineSpeedRpm: 4000,
  });
});

test('a survey says no gain, a trial without figures nothing', () => {
  expect(figuresOf(answer('survey')).some(({ id }) => id.startsWith('meanGain'))).toBe(false);
  expect(figuresOf({ comparison: null })).toEqual([]);
});
