import { describe, expect, test } from 'vitest';
import { blendVariance } from './blend-variance.ts';
import { BUILT_IN_PRIOR } from './built-in-prior.ts';
import { clustersOf } from './clusters.ts';
import { historyOfShop } from './history-of-shop.ts';
import { inventedDigest, inventedShop } from './invented-shop.testing.ts';
import type { PullDigest } from './model.ts';
import { type PriorInForce, priorInForce } from './own-prior.ts';
import { setUpReturns } from './returns.ts';
import { sentinelOf } from './sentinel.ts';
import { shopFigures as figuresOfClusters } from './shop-figures.ts';

const GUESS = priorInForce();

const shopFigures = (digests: readonly PullDigest[], inForce: PriorInForce) =>
  figuresOfClusters(clustersOf(digests), inForce);

/** Mean over simulated shops of a figure of each. */
const over = (shops: number, figure: (seed: number) => number): number =>
  Array.from({ length: shops }, (_, seed) => figure(seed + 1)).reduce((sum, one) => sum + one, 0) / shops;

test('without pulls all is the guess', () => {
  const history = historyOfShop([], GUESS, { cell: 'Cell 1', inductions: ['supercharged'] });
  expect(history.pull).toEqual({ sigma: 0.01, degreesOfFreedom: 6, from: 'built-in' });
  expect(Math.hypot(history.setUp.sigma, history.day.sigma)).toBeCloseTo(0.01, 15);
  expect(history.cell.sigma).toBe(0.03);
  const own = historyOfShop([], priorInForce({ setUp: 0.002 }), { cell: null, inductions: ['injected'] });
  expect(own.setUp).toEqual({ sigma: 0.002, degreesOfFreedom: 4, from: 'setting' });
  expect(own.day.from).toBe('built-in');
  const mixed = historyOfShop([], GUESS, { cell: null, inductions: ['injected', 'supercharged', null] });
  expect(mixed.pull.sigma).toBe(0.01);
  const unknown = historyOfShop([], GUESS, { cell: null, inductions: [] });
  expect(unknown.pull.sigma).toBe(0.006);
});

describe('one way analysis of variance', () => {
  // Yields of dyestuff in grams, six batches of five (Davies and Goldsmith, Statistical Methods in Research and Production,
  // 4th edition 1972, table 6.1, from memory as it is often reprinted): mean square between 11,271.5, within 2,451.25,
  // variance of a batch (11271.5 - 2451.25) / 5 = 1,764.05. Here as offsets in millionths.
  const BATCHES = [
    [1545, 1440, 1440, 1520, 1580],
    [1540, 1555, 1490, 1560, 1495],
    [1595, 1550, 1605, 1510, 1560],
    [1445, 1440, 1595, 1465, 1545],
    [1595, 1630, 1515, 1635, 1625],
    [1520, 1455, 1450, 1480, 1445],
  ];

  test('set-ups of one day give the batches’ variance', () => {
    const digests = BATCHES.flatMap((batch, setUp) =>
      batch.map((grams, at) =>
        inventedDigest(grams / 1e6, { pullId: `${setUp} ${at}`, setUpId: `set-up ${setUp}`, hours: 9 }),
      ),
    );
    const [seen] = setUpReturns(clustersOf(digests), () => 2451.25e-12);
    expect(seen!.degreesOfFreedom).toBe(5);
    expect(seen!.square).toBeCloseTo(11271.5e-12 / 5, 15);
    expect((seen!.square - seen!.nuisance) * 1e12).toBeCloseTo(1764.05, 6);
  });
});

describe('a variance seen through noise', () => {
  const prior = { sigma: 0.005, degreesOfFreedom: 4, from: 'built-in' } as const;

  test('weighs by hand: 4 degrees at 25e-6 and 4 at 1e-6 make 13e-6', () => {
    const spread = blendVariance(prior, [{ square: 1e-6, degreesOfFreedom: 4, nuisance: 0 }]);
    expect(spread.sigma ** 2).toBeCloseTo(13e-6, 15);
    expect(spread.degreesOfFreedom).toBe(4);
    expect(spread.from).toBe('shop');
  });

  test('drowned in noise it hardly moves the prior, and never to nothing', () => {
    const drowned = blendVariance(prior, [{ square: 0, degreesOfFreedom: 1, nuisance: 100e-6 }]);
    expect(drowned.sigma).toBeGreaterThan(0.0035);
    const silent = blendVariance(
      prior,
      Array.from({ length: 40 }, () => ({ square: 0, degreesOfFreedom: 1, nuisance: 25e-6 })),
    );
    expect(silent.sigma).toBeCloseTo(0.0005, 12);
  });
});

// 60 shops each; a fitted spread of one shop of these sizes is good to some 15 %, their mean to 2 %. The guess still weighs,
// 4 degrees of freedom against 15 to 45, and pulls it by up to an eighth of the variance: 12 % of sigma is let pass.
describe('simulated shops with known spreads', () => {
  const near = (value: number, truth: number, share = 0.12) => {
    expect(value).toBeGreaterThan(truth * (1 - share));
    expect(value).toBeLessThan(truth * (1 + share));
  };

  test('set-ups', () => {
    const made = { engines: 8, daysAnEngine: 2, setUpsADay: 3, pullsASetUp: 3, pull: 0.004, setUp: 0.008 };
    near(
      over(60, (seed) => shopFigures(inventedShop(seed, made), GUESS).setUp.spread.sigma),
      0.008,
    );
  });

  test('days, over what set-ups make', () => {
    const made = {
      engines: 10,
      daysAnEngine: 4,
      setUpsADay: 2,
      pullsASetUp: 2,
      pull: 0.003,
      setUp: 0.004,
      day: 0.012,
    };
    near(
      over(60, (seed) => shopFigures(inventedShop(seed, made), GUESS).day.spread.sigma),
      0.012,
    );
  });

  test('drift through a session', () => {
    const made = {
      engines: 10,
      daysAnEngine: 3,
      setUpsADay: 1,
      pullsASetUp: 8,
      pull: 0.002,
      driftPerHour: 0.004,
    };
    near(
      over(60, (seed) => shopFigures(inventedShop(seed, made), GUESS).drift.spread.sigma),
      0.004,
    );
  });

  test('cells: the band holds the truth in about 95 of 100', () => {
    const held = over(200, (seed) => {
      const digests = inventedShop(seed, {
        engines: 4,
        daysAnEngine: 2,
        setUpsADay: 1,
        pullsASetUp: 3,
        cells: ['Cell 1', 'Cell 2'],
        pull: 0.004,
        setUp: BUILT_IN_PRIOR.setUp,
        day: BUILT_IN_PRIOR.day,
      });
      const [offset] = shopFigures(digests, GUESS).cellOffsets;
      expect(offset!.engines).toBe(4);
      return offset!.low <= 0 && offset!.high >= 0 ? 1 : 0;
    });
    // Nothing lies between the cells. Four standard errors of a share of 0.95 in 200 are 6 %; the band errs wide, not narrow.
    expect(held).toBeGreaterThan(0.89);
  });
});

describe('through a session', () => {
  const at = (hours: number, offset: number, about: Partial<PullDigest> = {}) =>
    inventedDigest(offset, { pullId: `${hours}`, hours, ...about });
  const other = { combinationId: 'other' };

  test('A B A: the drift is what A lost, by hand', () => {
    const pulls = [at(9, 0), at(10, 0.02, other), at(11, -0.01)];
    const { drift, repeatability } = shopFigures(pulls, GUESS);
    const [session] = drift.sessions;
    expect(session!.perHour).toBeCloseTo(-0.005, 12);
    // Squares of the places of A's two pulls about 10 h: 1 + 1; one pull's scatter over their root.
    expect(session!.perHourSpread).toBeCloseTo(repeatability[0]!.spread.sigma / Math.SQRT2, 12);
    expect(session!.sentinel).toBeCloseTo(Math.expm1(-0.01), 12);
  });

  test('blocks of two tell no drift, and nothing came back', () => {
    const [session] = shopFigures([at(9, 0), at(9.25, 0), at(10, 0.02, other), at(10.25, 0.02, other)], GUESS)
      .drift.sessions;
    expect(session!.perHour).toBeNull();
    expect(session!.sentinel).toBeNull();
  });

  test('four in a row: the last against the first', () => {
    const clusters = clustersOf([at(9, 0), at(9.2, -0.004), at(9.4, -0.009), at(9.6, -0.012)]);
    expect(sentinelOf(clusters)).toBeCloseTo(Math.expm1(-0.012), 12);
  });

  test('the first ones are those before anything else, the last those after', () => {
    const clusters = clustersOf([
      at(9, 0),
      at(9.2, 0.002),
      at(9.4, 0.05, other),
      at(9.6, -0.5),
      at(9.8, 0.05, other),
      at(10, -0.01),
      at(10.2, -0.012),
    ]);
    expect(sentinelOf(clusters)).toBeCloseTo(Math.expm1(-0.011 - 0.001), 12);
  });
});
