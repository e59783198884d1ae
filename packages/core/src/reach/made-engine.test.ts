import { expect, test } from 'vitest';
import { matchInputOf, solveMatch, withOtherFuel } from '../airpath/index.ts';
import { fitMatch, withFit } from '../fit/index.ts';
import { said } from '../remark/index.ts';
import { aloneCurve, type ReachBuild, type ReachInput, reach, sheetWith } from './index.ts';
import { aloneBuild, BASELINE, buildOf, fuelOf, reachInput, sheetOf } from './reach-input.testing.ts';

const provenance = { kind: 'common practice', source: 'common practice, no source' } as const;
const ICE: ReachInput['coolers'][number] = {
  id: 'ice',
  name: 'ice water',
  cooler: {
    by: 'ice water',
    effectiveness: 0.85,
    loss: { pressureDifference: 3000, atFlow: 0.5, atDensity: 1.6 },
    coolantTemperature: 277.15,
  },
  cost: 2,
  from: provenance,
};

/** The invented engine with a fit to a pull that made 3 % less power at 4 % less boost than its match. */
function fittedBuild(): ReachBuild {
  const build = buildOf(sheetOf());
  const ready = build.match!;
  const { figures, engineSpeedRpm } = solveMatch(ready.input);
  const fit = fitMatch([
    {
      ...ready,
      pull: {
        pullId: 'boosted',
        engineSpeedRpm,
        brakePower: Array.from(figures.brakePower, (power) => 0.97 * power),
        boost: Array.from(figures.boost, (boost) => 0.96 * boost),
        chargeTemperature: null,
        dischargeTemperature: null,
        airFlow: null,
        impellerSpeedRpm: null,
        air: ready.input.air,
      },
    },
  ]);
  if (!fit.ok) throw new Error(fit.remarks[0]?.message);
  return { ...build, fit: fit.value, match: withFit(ready, fit.value) };
}

test('a rung is what a match of its changed sheet says, with the fit taken in and its fuel last', () => {
  const build = fittedBuild();
  const input = reachInput({
    builds: [build],
    target: { what: 'peak power', power: 560e3, atRpm: null, windowRpm: null, boostCap: null },
    coolers: [ICE],
    fuels: [fuelOf('E85')],
    draws: 20,
    mostChanges: 3,
    mostRungs: 6,
  });
  const answer = reach(input);
  const parts = new Set(answer.rungs.flatMap(({ changes }) => changes.map(({ part }) => part)));
  expect([...parts].sort()).toEqual(expect.arrayContaining(['cooler', 'pulley']));
  for (const { changes, made, peakPower, ground } of [answer.now, ...answer.rungs]) {
    const ready = matchInputOf({ ...build.madeOf!, sheet: sheetWith(build.sheet, changes) });
    if (!ready.ok) throw new Error(ready.remarks[0]?.message);
    const fitted = withFit(ready.value, build.fit!);
    const other = changes.some(({ part }) => part === 'fuel');
    const { fuel: before, lambda, mixes } = input.supply;
    const match = other
      ? withOtherFuel(fitted, { before, after: fuelOf('E85').fuel, lambda, mixes }).match
      : fitted;
    const expected = solveMatch(match.input).figures.brakePower;
    const found = solveMatch(made!.match!.input).figures.brakePower;
    const off = Array.from(found, (power, node) => Math.abs(power / expected[node]! - 1));
    expect(Math.max(...off)).toBeLessThan(1e-9);
    expect(Math.abs(peakPower.value / Math.max(...expected) - 1)).toBeLessThan(1e-9);
    expect(ground).toBe(
      other || changes.some(({ part }) => part === 'cooler') ? 'rule of thumb' : 'scaled from your data',
    );
  }
});

test('another supercharger takes the place of the one that is there, with its own sheet and its own pulleys', () => {
  const sheet = sheetOf({
    supercharger: {
      type: 'centrifugal',
      stepUp: 4,
      maximumImpellerSpeed: '60000 rpm',
      bypassAtFullThrottle: 'shut',
    },
  });
  const change: ReachBuild['change'] = {
    part: 'supercharger',
    said: said`Another unit`,
    edits: [{ section: 'supercharger', field: 'stepUp', text: '4' }],
    clears: [],
    cost: 4,
    ground: 'rule of thumb',
    from: said`its sheet`,
  };
  const answer = reach(
    reachInput({
      builds: [buildOf(sheetOf()), buildOf(sheet, { id: 'other', change })],
      target: { what: 'peak power', power: 650e3, atRpm: null, windowRpm: null, boostCap: null },
      draws: 20,
    }),
  );
  const other = answer.rungs.filter(({ buildId }) => buildId === 'other');
  expect(other.length).toBeGreaterThan(0);
  for (const { changes, cost, made } of other) {
    expect(changes[0]).toEqual(change);
    expect(cost.total).toBe(changes.reduce((sum, one) => sum + (one.cost === 0 ? 0 : 4 ** one.cost), 0));
    expect(made!.match!.input.drive.stepUp).toBe(4);
  }
  expect(answer.left.map(({ buildId }) => buildId)).toEqual(['present', 'other']);
});

test('the engine alone: as its baseline, and power rises by what its indicated power gains', () => {
  const plain = aloneCurve(BASELINE, null, null);
  for (const [node, power] of plain.figures.brakePower.entries())
    expect(power).toBeCloseTo(BASELINE.brakePower[node]!, 6);
  const better = aloneCurve(
    BASELINE,
    BASELINE.engineSpeedRpm.map(() => 1.04),
    BASELINE.engineSpeedRpm.map(() => 1.01),
  );
  BASELINE.engineSpeedRpm.forEach((speed, node) => {
    const friction = BASELINE.frictionPower[node]!;
    const expected = 1.04 * 1.01 * (BASELINE.brakePower[node]! + friction) - friction;
    expect(better.figures.brakePower[node]).toBeCloseTo(expected, 6);
    // Torque is power over 2 pi n.
    expect((better.figures.brakeTorque[node]! * Math.PI * speed) / 30).toBeCloseTo(expected, 6);
    expect(better.figures.airFlow[node]).toBeCloseTo(1.04 * BASELINE.airFlow[node]!, 9);
  });
  expect(new Set(better.state)).toEqual(new Set(['bypassed']));
});

test('an engine without a supercharger is asked as well: breathing and fuel, with the spread of its own baseline', () => {
  const now = Math.max(...BASELINE.brakePower);
  const alone: ReachBuild = { ...aloneBuild(), isPresent: true, change: null };
  const heads: ReachInput['breathing'][number] = {
    id: 'heads',
    name: 'ported heads',
    engineSpeedRpm: [3000, 6700],
    factor: [1, 1.08],
    spread: 0.01,
    ground: 'measured by you',
    from: said`two pulls`,
    edits: [],
    cost: 3,
    pullIds: ['before', 'after'],
  };
  const input = reachInput({
    builds: [alone],
    target: { what: 'peak power', power: 1.05 * now, atRpm: null, windowRpm: null, boostCap: null },
    breathing: [heads],
    draws: 2000,
  });
  const [rung, ...more] = reach(input).rungs;
  expect(more).toEqual([]);
  expect(rung).toMatchObject({ reaches: true, ground: 'measured by you', highestBoost: null });
  expect(rung!.made!.match).toBeNull();
  // Power of a measured baseline is given to 1 % and the gain to 1 % of what is indicated: independent, 1.96 of both together.
  const friction = BASELINE.frictionPower.at(-1)!;
  const power = BASELINE.brakePower.at(-1)!;
  const half = 1.96 * Math.hypot(0.01 * 1.08 * power, 0.01 * 1.08 * (power + friction));
  expect(rung!.peakPower.high - rung!.peakPower.value).toBeGreaterThan(0.85 * half);
  expect(rung!.peakPower.high - rung!.peakPower.value).toBeLessThan(1.15 * half);
});

test('average power and power at a speed are read on straight lines, and a rung reaches by them', () => {
  const at = reach(
    reachInput({
      target: { what: 'power at a speed', power: 400e3, atRpm: 5050, windowRpm: null, boostCap: null },
      draws: 20,
      mostChanges: 1,
    }),
  );
  const over = reach(
    reachInput({
      target: { what: 'average power', power: 400e3, atRpm: null, windowRpm: [4000, 6000], boostCap: null },
      draws: 20,
      mostChanges: 1,
    }),
  );
  for (const { reached, made } of at.rungs) {
    const { engineSpeedRpm, figures } = solveMatch(made!.match!.input);
    const upper = engineSpeedRpm.findIndex((speed) => speed >= 5050);
    const [low, high] = [figures.brakePower[upper - 1]!, figures.brakePower[upper]!];
    const share = (5050 - engineSpeedRpm[upper - 1]!) / (engineSpeedRpm[upper]! - engineSpeedRpm[upper - 1]!);
    expect(reached.value).toBeCloseTo(low + share * (high - low), 3);
  }
  for (const { reached, made } of over.rungs) {
    // Nodes lie 100 r/min apart from 3,000 on: the trapezoid rule over 21 of them.
    const powers = Array.from(solveMatch(made!.match!.input).figures.brakePower).slice(10, 31);
    const ends = (powers[0]! + powers.at(-1)!) / 2;
    const mean = (powers.slice(1, -1).reduce((sum, power) => sum + power, 0) + ends) / 20;
    expect(reached.value).toBeCloseTo(mean, 3);
  }
  expect(at.rungs.length).toBeGreaterThan(0);
  expect(over.rungs.length).toBeGreaterThan(0);
});
