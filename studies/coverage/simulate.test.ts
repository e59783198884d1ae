import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { KNOWN } from './cases.ts';
import { chanceFor } from './chance.ts';
import { inOrder, type Scene } from './scene.ts';
import { SPEEDS_RPM, simulate } from './simulate.ts';

const RUNS = 2000;
const scene = (more: Partial<Scene>, order = 'A1 A1'): Scene => ({
  pulls: inOrder(order, { timed: false }),
  told: KNOWN,
  truth: 'exact',
  gain: 'none',
  ...more,
});
const logAverage = (power: Float64Array) => Math.log(power.reduce((sum, one) => sum + one, 0) / power.length);
const deviationOf = (values: number[]) => {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  return Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1));
};

/** Standard deviation of the difference of the first and the last pull's average, over many scenes. */
function spreadOfEnds(one: Scene): number {
  const chance = chanceFor(7, 'ends');
  const ends = Array.from({ length: RUNS }, () => {
    const { pulls } = simulate(one, chance);
    return logAverage(pulls.at(-1)!.power) - logAverage(pulls[0]!.power);
  });
  return deviationOf(ends);
}
/** Of a standard deviation from so many normal values, four of its errors. */
const near = (expected: number) => (4 * expected) / Math.sqrt(2 * RUNS);
const { pull, setUp, day, cell } = KNOWN;

test('the simulator uses nothing of the program under study', () => {
  for (const file of ['simulate', 'scene', 'wander', 'chance']) {
    const text = readFileSync(new URL(`./${file}.ts`, import.meta.url), 'utf8');
    const from = [...text.matchAll(/from '([^']+)'/g)].map(([, to]) => to!);
    expect(from.filter((to) => !/^pure-rand\/|^\.\/(?:scene|wander|chance)\.ts$/.test(to))).toEqual([]);
  }
});

describe('the simulator makes what it is told', () => {
  test.each([
    ['pulls of one set-up', scene({}), pull.sigma],
    ['pulls that scatter twice as told', scene({ truth: 2 }), 2 * pull.sigma],
    ['waves along the speed', scene({ along: 'waves' }), pull.sigma],
    ['another set-up', scene({}, 'A1 A2'), Math.hypot(pull.sigma, setUp.sigma)],
    ['another day', scene({}, 'A1 | A1'), Math.hypot(pull.sigma, day.sigma)],
    ['another cell', scene({}, 'A1 @ A2'), Math.hypot(pull.sigma, setUp.sigma, day.sigma, cell.sigma)],
  ])('%s', (_, one, sigma) => {
    const expected = sigma * Math.SQRT2;
    expect(Math.abs(spreadOfEnds(one) - expected)).toBeLessThan(near(expected));
  });

  test('a speed against its pull’s average scatters as told, in either form', () => {
    for (const along of ['remembering', 'waves'] as const) {
      const chance = chanceFor(7, along);
      const squares = Array.from({ length: 1500 }, () => {
        const [one, other] = simulate(scene({ along }), chance).pulls;
        const apart = [...SPEEDS_RPM.keys()].map((node) => Math.log(one!.power[node]! / other!.power[node]!));
        return deviationOf(apart) ** 2;
      });
      const found = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
      // Over 41 speeds that are kin, so a curve tells less than 40 degrees of freedom: some ten.
      const expected = KNOWN.within.sigma * Math.SQRT2;
      expect(Math.abs(found / expected / Math.sqrt(40 / 41) - 1)).toBeLessThan(
        4 / Math.sqrt(2 * 10 * 1500) + 0.013,
      );
    }
  });

  test('drift, soak and gain are there in full where nothing scatters', () => {
    const none = { sigma: 0, degreesOfFreedom: 1 };
    const quiet = {
      told: {
        pull: none,
        setUp: none,
        day: none,
        cell: none,
        within: { ...none, lengthRpm: 250 },
        driftPerHour: { sigma: 0.002, degreesOfFreedom: 1 },
      },
    };
    const chance = chanceFor(7, 'quiet');
    const timed = inOrder('A1 B1 B1 A1', { timed: true });
    const drifting = simulate(scene({ ...quiet, pulls: timed, drift: 5 }), chance).pulls;
    const drift = logAverage(drifting[3]!.power) - logAverage(drifting[0]!.power);
    expect(Math.abs(drift)).toBeCloseTo(5 * 0.002 * 0.75, 12);
    const soak = { share: 0.01, hours: 0.3, warmUps: 2 };
    const soaking = simulate(scene({ ...quiet, pulls: timed, soak }), chance).pulls;
    const fall = logAverage(soaking[3]!.power) - logAverage(soaking[0]!.power);
    expect(fall).toBeCloseTo(-0.01 * (Math.exp(-0.5 / 0.3) - Math.exp(-1.25 / 0.3)), 12);
    const gaining = simulate(scene({ ...quiet, pulls: timed, gain: 'above-4200' }), chance);
    const ratio = (node: number) => gaining.pulls[1]!.power[node]! / gaining.pulls[0]!.power[node]! - 1;
    expect(ratio(SPEEDS_RPM.indexOf(4200))).toBeCloseTo(0, 12);
    expect(ratio(SPEEDS_RPM.indexOf(5000))).toBeCloseTo(0.024, 12);
    const mean = Math.expm1(logAverage(gaining.pulls[1]!.power) - logAverage(gaining.pulls[0]!.power));
    expect(gaining.trueGain.mean).toBeCloseTo(mean, 12);
  });
});
