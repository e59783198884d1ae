import { expect, test } from 'vitest';
import { inventedHistory, spread } from '../scatter/history.testing.ts';
import { compareArrays, type PullArray, type ScatterComparison } from '../scatter/index.ts';
import { pullsToSettle } from './pulls-to-settle.ts';

const SPEEDS = [3000, 3500, 4000, 4500];

function pullOf(group: string, share: number, setUp: string, place: number): PullArray {
  return {
    engineSpeedRpm: SPEEDS,
    power: SPEEDS.map((speed) => speed * 50 * (1 + share)),
    group,
    setUp,
    session: 'day',
    cell: 'cell 1',
    hours: place / 4,
  };
}

/** Two pulls of each that agree to 0.2 %, the second combination up by `gain`. */
function compared(gain: number, setUps: [string, string], setUpScatter: number): ScatterComparison {
  const pulls = [
    pullOf('A', -0.001, setUps[0], 0),
    pullOf('B', gain + 0.001, setUps[1], 1),
    pullOf('B', gain - 0.001, setUps[1], 2),
    pullOf('A', 0.001, setUps[0], 3),
  ];
  const history = inventedHistory({ pull: spread(0.004, 20), setUp: spread(setUpScatter, 20) });
  const result = compareArrays(pulls, { history, baseline: 'A' });
  if (!result.ok) throw new Error(result.remarks[0]?.message);
  return result.value;
}

test('a clear gain needs no more pulls', () => {
  expect(pullsToSettle(compared(0.03, ['one', 'one'], 0.005), 'B')).toEqual({
    morePulls: 0,
    because: 'settled',
  });
});

test('a gain near the edge takes a few more, a smaller one takes more', () => {
  const near = pullsToSettle(compared(0.0075, ['one', 'one'], 0.005), 'B');
  const far = pullsToSettle(compared(0.005, ['one', 'one'], 0.005), 'B');
  expect(near.because).toBe('pulls');
  expect(near.morePulls).toBeGreaterThanOrEqual(1);
  expect(far.morePulls ?? 7).toBeGreaterThan(near.morePulls!);
});

test('a gain of next to nothing is too small, one under the scatter of set-ups needs another set-up', () => {
  expect(pullsToSettle(compared(0.0005, ['one', 'one'], 0.005), 'B')).toEqual({
    morePulls: null,
    because: 'too small',
  });
  expect(pullsToSettle(compared(0.012, ['one', 'two'], 0.01), 'B')).toEqual({
    morePulls: null,
    because: 'set-up',
  });
});

test('asking after a group that is not compared is a broken assumption', () => {
  expect(() => pullsToSettle(compared(0.01, ['one', 'one'], 0), 'C')).toThrow(/no gain of group C/);
});
