import { expect, test } from 'vitest';
import { MATCH_FIGURES, type MatchCurve, type MatchFigure } from '../airpath/index.ts';
import { slopeWord, whyBoostMoved } from './why-boost-moved.ts';

/** A match of one speed with the figures given; others are nil. */
function curve(figures: Partial<Record<MatchFigure, number>>): MatchCurve {
  const all = MATCH_FIGURES.map((figure) => [figure, Float64Array.of(figures[figure] ?? 0)]);
  return { engineSpeedRpm: [6000], figures: Object.fromEntries(all), state: ['on the map'] };
}

const BEFORE = {
  boost: 70e3,
  pressureRatio: 1.8,
  dischargePressure: 178e3,
  correctedFlow: 0.4,
  impellerSpeedRpm: 45_000,
  manifoldTemperature: 320,
  brakePower: 360e3,
  drivePower: 32e3,
} as const;
const why = (after: Partial<Record<MatchFigure, number>>, slope = -0.6) =>
  whyBoostMoved(
    curve({ ...BEFORE, slopeOfLine: slope }),
    curve({ ...BEFORE, slopeOfLine: slope, ...after }),
    6000,
  ).map(({ text }) => text);

test('more air on a falling line: boost drops, and it is said how the line runs', () => {
  const [first, ...more] = why({ correctedFlow: 0.424, boost: 64e3 });
  expect(first).toBe(
    'At 6,000 rpm 6.0 % more air goes through the compressor; its speed line falls there, 0.60 % of pressure ratio for each per cent of flow, and boost drops by 6.0 kPa (70.0 kPa to 64.0 kPa).',
  );
  expect(more).toEqual([]);
});

test('the same more air on a flat and on a rising line', () => {
  expect(why({ correctedFlow: 0.424 }, 0.01)[0]).toContain('flat there, and boost stays');
  expect(why({ correctedFlow: 0.424, boost: 72e3 }, 0.2)[0]).toMatch(
    /still rises there.+boost rises by 2\.0 kPa/,
  );
});

test('less air on a falling line', () => {
  expect(why({ correctedFlow: 0.38, boost: 74e3 })[0]).toMatch(/5\.0 % less air.+falls there.+boost rises/);
});

test('a faster impeller is told first, then what the flow does along the line, the charge and the drive', () => {
  const told = why({
    correctedFlow: 0.42,
    boost: 78e3,
    impellerSpeedRpm: 47_250,
    manifoldTemperature: 325,
    brakePower: 372e3,
    drivePower: 37e3,
  });
  expect(told).toHaveLength(4);
  // 1.05² is 1.1025, as floats just above.
  expect(told[0]).toMatch(
    /^At 6,000 rpm the impeller turns 5\.0 % faster.+10\.3 % more head, and boost rises by 8\.0 kPa/,
  );
  // 5 % more flow at 0.6 % of pressure ratio each.
  expect(told[1]).toMatch(/^5\.0 % more air.+falls there.+takes 3\.0 % of pressure ratio\.$/);
  expect(told[2]).toMatch(/5 K warmer/);
  // 5 kW of the 17 kW that the air gains; 37 of 372.
  expect(told[3]).toMatch(/5\.0 kW more, 29 % of what the air gains; in all it is 9\.9 % of brake power/);
  expect(why({ correctedFlow: 0.42, boost: 66e3, manifoldTemperature: 280 })[1]).toMatch(
    /40 K cooler.+better breathing/,
  );
});

test('boost that goes against the flow is not laid to it', () => {
  // 0.4 % less flow on a line that falls by 0.6 would raise 178 kPa by 0.4 kPa.
  expect(why({ correctedFlow: 0.3984, boost: 69e3 })[0]).toMatch(
    /less air.+yet boost drops by 1\.0 kPa.+not the flow/,
  );
  // 6 % on a flat line makes nothing of 3 kPa.
  expect(why({ correctedFlow: 0.424, boost: 73e3 }, 0.01)[0]).toContain('not the flow');
});

test('as much air: boost moved for another reason', () => {
  expect(why({ boost: 65e3 })[0]).toMatch(/as much air.+boost drops by 5\.0 kPa/);
});

test('no match on one side, no words', () => {
  expect(why({ boost: Number.NaN })).toEqual([]);
  expect(whyBoostMoved(curve(BEFORE), curve(BEFORE), 7000)).toEqual([]);
});

test('the word for a slope', () => {
  expect([-0.6, -0.03, 0, 0.04, 0.2].map(slopeWord)).toEqual(['falls', 'flat', 'flat', 'flat', 'rises']);
});
