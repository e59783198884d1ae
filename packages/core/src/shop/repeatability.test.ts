import { describe, expect, test } from 'vitest';
import type { Spread } from '../scatter/index.ts';
import { clustersOf } from './clusters.ts';
import { inventedDigest, inventedShop, normalsFrom } from './invented-shop.testing.ts';
import type { PullDigest } from './model.ts';
import { pullSpreadFrom, repeatabilityOf } from './repeatability.ts';

const PRIOR: Spread = { sigma: 0.004, degreesOfFreedom: 6, from: 'built-in' };

const pullsOff = (offsets: number[], about: Partial<PullDigest> = {}): PullDigest[] =>
  offsets.map((offset, at) =>
    inventedDigest(offset, { pullId: `${about.day ?? ''}${at}`, hours: 9 + at / 4, ...about }),
  );

describe('clusters', () => {
  test('variance of three pulls by hand: -1, 0, 1 thousandth is one millionth of two degrees of freedom', () => {
    const [cluster] = clustersOf(pullsOff([-0.001, 0, 0.001]));
    expect(cluster!.degreesOfFreedom).toBe(2);
    expect(cluster!.variance).toBeCloseTo(1e-6, 15);
  });

  test('four pulls that fall along a straight line do not scatter; three do', () => {
    const [four] = clustersOf(pullsOff([0, -0.002, -0.004, -0.006]));
    expect(four!.degreesOfFreedom).toBe(2);
    expect(four!.variance).toBeCloseTo(0, 12);
    const [three] = clustersOf(pullsOff([0, -0.002, -0.004]));
    expect(three!.variance).toBeCloseTo(4e-6, 15);
  });

  test('another set-up, day, cell, tune or standard is another cluster', () => {
    const [pull] = pullsOff([0]) as [PullDigest];
    const others = [
      { setUpId: 'second' },
      { day: '2026-03-17' },
      { cell: 'Cell 2' },
      { footing: '34 degrees' },
      { combinationId: 'other' },
    ].map((about, at) => ({ ...pull, pullId: `other ${at}`, ...about }));
    expect(clustersOf([pull, ...others])).toHaveLength(6);
  });

  test('rejected, aborted and warm-up pulls never count', () => {
    const pulls = pullsOff([0, 0.001, 0.05]);
    const [cluster] = clustersOf([pulls[0]!, pulls[1]!, { ...pulls[2]!, counts: false }]);
    expect(cluster!.pulls.map(({ pullId }) => pullId)).toEqual(['0', '1']);
    expect(cluster!.variance).toBeCloseTo(0.5e-6, 15);
  });

  test('only the speeds that all pulls share say how they scatter', () => {
    const [whole, short] = pullsOff([0, 0.002]) as [PullDigest, PullDigest];
    const late = { ...short, fromRpm: 4000, logPower: short.logPower.slice(4) };
    const [cluster] = clustersOf([whole, late]);
    expect(cluster!.profile.fromRpm).toBe(4000);
    expect(cluster!.variance).toBeCloseTo(2e-6, 15);
    expect(clustersOf([whole, { ...late, fromRpm: 9000 }])).toEqual([]);
  });
});

describe('spread of pulls', () => {
  test('without a repeat it is the prior', () => {
    expect(pullSpreadFrom([], PRIOR)).toEqual(PRIOR);
    expect(pullSpreadFrom(clustersOf(pullsOff([0.01])), PRIOR)).toEqual(PRIOR);
  });

  test('one cluster moves it a little, towards itself', () => {
    const spread = pullSpreadFrom(clustersOf(pullsOff([-0.02, 0, 0.02])), PRIOR);
    expect(spread.sigma).toBeGreaterThan(0.004);
    expect(spread.sigma).toBeLessThan(0.012);
    expect(spread.from).toBe('built-in');
    expect(spread.degreesOfFreedom).toBeCloseTo(6, 12);
  });

  test('pulls of one cluster over and over make its figure no surer than the cluster is', () => {
    const some = pullsOff([-0.002, 0.001, 0.003]);
    const many = Array.from({ length: 50 }, (_, copy) =>
      some.map((one, at) => ({ ...one, pullId: `${copy} ${at}`, hours: 9 + (copy * 3 + at) / 4 })),
    ).flat();
    const [clusters] = [clustersOf(many)];
    expect(clusters).toHaveLength(1);
    expect(clusters[0]!.degreesOfFreedom).toBe(148);
    const spread = pullSpreadFrom(clusters, PRIOR);
    expect(spread.degreesOfFreedom).toBeLessThanOrEqual(6 + 1e-9);
    expect(spread.from).toBe('built-in');
    for (const count of [2, 5, 9]) {
      const apart = Array.from({ length: count }, (_, day) =>
        pullsOff([-0.002, 0.001, 0.003], { day: `2026-04-0${day + 1}` }),
      ).flat();
      const known = pullSpreadFrom(clustersOf(apart), PRIOR).degreesOfFreedom;
      expect(known).toBeLessThanOrEqual(Math.max(6, 2 * count) + 1e-9);
    }
  });

  // 200 shops of 30 clusters of three pulls. The prior, two times too small, still weighs 6 against some 45 to 60: 3 to 4 % of
  // sigma low. Where days seem to differ by chance the fitted level lies below their mean, and fewer degrees of freedom make
  // up for it (Student's t of 10 is 14 % wider than the normal's): up to another 10 % low. Hence 15 % below and 10 % above.
  test('a shop that scatters twice as much as guessed is recovered', () => {
    const found = Array.from({ length: 200 }, (_, seed) => {
      const digests = inventedShop(seed + 1, {
        engines: 10,
        daysAnEngine: 3,
        setUpsADay: 1,
        pullsASetUp: 3,
        pull: 0.008,
      });
      return pullSpreadFrom(clustersOf(digests), PRIOR);
    });
    const middle = found.reduce((sum, { sigma }) => sum + sigma, 0) / found.length;
    expect(middle).toBeGreaterThan(0.0068);
    expect(middle).toBeLessThan(0.0088);
    expect(found.every(({ from }) => from === 'shop')).toBe(true);
  });

  test('days that really differ leave few degrees of freedom, days alike many', () => {
    const known = (sigmaOf: (day: number) => number) =>
      Array.from({ length: 40 }, (_, seed) => {
        const normal = normalsFrom(seed + 1);
        const pulls = Array.from({ length: 40 }, (__, day) => {
          const at = `20${10 + (day % 20)}-0${1 + Math.floor(day / 20)}-01`;
          return pullsOff(
            Array.from({ length: 5 }, () => normal() * sigmaOf(day)),
            { day: at },
          );
        });
        return pullSpreadFrom(clustersOf(pulls.flat()), PRIOR).degreesOfFreedom;
      });
    const alike = known(() => 0.004);
    const mixed = known((day) => (day % 2 === 0 ? 0.001 : 0.01));
    // Of days alike about every second shop sees no difference at all and ends at the cap of 80, blended with the 6 of the guess.
    expect(alike.filter((one) => one > 40).length).toBeGreaterThan(10);
    expect(Math.max(...mixed)).toBeLessThan(6);
  });

  test('by cell and kind of engine, and over the months', () => {
    const found = repeatabilityOf(
      clustersOf([
        ...pullsOff([-0.001, 0, 0.001], { day: '2026-03-02' }),
        ...pullsOff([-0.002, 0, 0.002], { day: '2026-04-02' }),
        ...pullsOff([-0.01, 0, 0.01], { day: '2026-04-03', cell: 'Cell 2', induction: 'supercharged' }),
        ...pullsOff([0, 0.3], { day: '2026-04-04', induction: null }),
      ]),
      () => PRIOR,
    );
    expect(found.map(({ cell, induction, clusters, pulls }) => [cell, induction, clusters, pulls])).toEqual([
      ['Cell 1', 'injected', 2, 6],
      ['Cell 2', 'supercharged', 1, 3],
    ]);
    // ISO 5725-6 (from memory): the repeatability limit is 2.8 sigma where sigma is known; t of 6 degrees of freedom is 2.447.
    const { spread, twoPullsDiffer } = found[1]!;
    expect(spread.degreesOfFreedom).toBeCloseTo(6, 9);
    expect(twoPullsDiffer / spread.sigma).toBeCloseTo(2.447 * Math.SQRT2, 3);
    const months = found[0]!.overTime;
    expect(months.map(({ month }) => month)).toEqual(['2026-03', '2026-04']);
    expect(months[0]!.sigma).toBeCloseTo(0.001, 12);
    expect(months[1]!.sigma).toBeCloseTo(0.002, 12);
  });
});
