import { expect, test } from 'vitest';
import { MATCH_FIGURES, type MatchCase, type MatchInput, type SpreadGroup } from '../model.ts';
import { bandsOfDraws, matchBands } from './match-bands.ts';
import { matchDraws } from './match-draws.ts';
import { inventedBaseline, nodesOf, plainInput } from './match-input.testing.ts';
import { solveMatch } from './solve-match.ts';

const NODES = nodesOf(3500, 6500, 4);

function input(changes: Partial<MatchInput> = {}): MatchInput {
  const base = plainInput();
  return plainInput({ baseline: inventedBaseline(base.air, NODES), ...changes });
}

const part = (key: string, name: SpreadGroup['parts'][number], sigma: number): SpreadGroup => ({
  key,
  parts: [name],
  factor: [[sigma]],
});

const ALL: SpreadGroup[] = [
  { key: 'baseline', parts: ['baselineAir', 'baselinePower'], factor: [[0.03], [0.004, 0.008]] },
  { key: 'map', parts: ['head', 'mapFlow', 'efficiency'], factor: [[0.03], [0, 0.02], [0, 0, 0.02]] },
  part('cooler', 'cooler', 0.05),
  part('drive', 'slip', 0.005),
  { key: 'model', parts: ['swallowing', 'chargeHeat', 'work'], factor: [[0.02], [0, 0.1], [0, 0, 0.01]] },
];

test('slices made apart give what one run gives, number by number', () => {
  const cases: MatchCase[] = [
    { input: input(), spread: ALL },
    { input: input({ tap: 'before throttle' }), spread: ALL },
  ];
  const whole = matchBands(cases, { draws: 90, seed: 4 });
  const slices = [0, 30, 60].map((from) => matchDraws(cases, { draws: 30, seed: 4, from }));
  expect(bandsOfDraws(slices)).toEqual(whole);
  expect(matchBands(cases, { draws: 90, seed: 5 })).not.toEqual(whole);
});

test('a share of the work alone: brake power is normal about the match, by 1.96 of it times indicated power', () => {
  const given = input();
  const { figures } = solveMatch(given);
  const { brakePower, boost } = matchBands([{ input: given, spread: [part('w', 'work', 0.01)] }], {
    draws: 4000,
    seed: 9,
  }).cases[0]!;
  NODES.forEach((_, node) => {
    const half = 1.96 * 0.01 * figures.indicatedPower[node]!;
    // A 2.5 % quantile of 4000 draws lies within 0.12 standard deviations (three of its own).
    const room = 0.12 * 0.01 * figures.indicatedPower[node]!;
    expect(Math.abs(brakePower.low[node]! - (figures.brakePower[node]! - half))).toBeLessThan(room);
    expect(Math.abs(brakePower.high[node]! - (figures.brakePower[node]! + half))).toBeLessThan(room);
    expect(boost.high[node]! - boost.low[node]!).toBeLessThan(0.1);
  });
});

test('parts of one group go together as their factor says', () => {
  // Head and work opposed one to one, so that each takes back part of what the other gives.
  const opposed: SpreadGroup = { key: 'k', parts: ['swallowing', 'work'], factor: [[0.03], [-0.03, 0]] };
  const apart = [part('a', 'swallowing', 0.03), part('b', 'work', 0.03)];
  const width = (spread: SpreadGroup[]) => {
    const { low, high } = matchBands([{ input: input(), spread }], { draws: 800, seed: 2 }).cases[0]!
      .brakePower;
    return high[3]! - low[3]!;
  };
  expect(width([opposed])).toBeLessThan(0.5 * width(apart));
});

test('what two matches share cancels in their difference; what they do not, adds', () => {
  const before = input();
  const after = input({ drive: { ...before.drive, pulleyRatio: 2.1 } });
  const width = (keyOfAfter: string) => {
    const spread = (key: string) => [part(key, 'baselineAir', 0.04), part(`${key} map`, 'head', 0.03)];
    const bands = matchBands(
      [
        { input: before, spread: spread('same') },
        { input: after, spread: spread(keyOfAfter) },
      ],
      { draws: 600, seed: 1 },
    );
    const wide = ({ low, high }: { low: number[]; high: number[] }) => high[3]! - low[3]!;
    return { own: wide(bands.cases[1]!.boost), difference: wide(bands.differences[1]!.boost) };
  };
  const shared = width('same');
  const other = width('another');
  expect(shared.difference).toBeLessThan(0.35 * shared.own);
  expect(other.difference).toBeGreaterThan(1.2 * other.own);
});

test('the difference of the first against itself is nothing, and one case has no differences', () => {
  const one: MatchCase = { input: input(), spread: ALL };
  const bands = matchBands([one, one], { draws: 60, seed: 3 });
  expect(bands.differences[0]!.boost.high).toEqual(NODES.map(() => 0));
  expect(bands.differences[1]!.brakePower.low).toEqual(NODES.map(() => 0));
  expect(matchBands([one], { draws: 10, seed: 3 }).differences).toEqual([]);
});

test('nodes of another baseline have a difference where their speeds are the same, else none', () => {
  const first = input();
  const shifted = input({ baseline: inventedBaseline(first.air, [3500, 4000, 6500]) });
  const { differences } = matchBands(
    [
      { input: first, spread: ALL },
      { input: shifted, spread: ALL },
    ],
    { draws: 60, seed: 3 },
  );
  const { low } = differences[1]!.boost;
  expect(low.map(Number.isFinite)).toEqual([true, false, true]);
});

test('where more than a tenth of the draws have no solution there is no band', () => {
  const lowWith = (unsolved: number) => {
    const draws = 100;
    const values = new Float32Array(MATCH_FIGURES.length * draws).map((_, place) =>
      place % draws < unsolved ? Number.NaN : place % draws,
    );
    const bands = bandsOfDraws([{ from: 0, draws, seed: 1, cases: [{ engineSpeedRpm: [6000], values }] }]);
    return bands.cases[0]!.brakePower.low[0]!;
  };
  // 2.5 % of the way from 5 to 99, by hand.
  expect(lowWith(5)).toBeCloseTo(7.35, 5);
  expect(lowWith(15)).toBeNaN();
});

test('every band encloses the match it belongs to', () => {
  const given = input();
  const { figures } = solveMatch(given);
  const bands = matchBands([{ input: given, spread: ALL }], { draws: 500, seed: 8 }).cases[0]!;
  for (const figure of ['boost', 'manifoldTemperature', 'airFlow', 'drivePower', 'brakePower'] as const) {
    NODES.forEach((_, node) => {
      expect(bands[figure].low[node]).toBeLessThan(figures[figure][node]!);
      expect(bands[figure].high[node]).toBeGreaterThan(figures[figure][node]!);
    });
  }
});
