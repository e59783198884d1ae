import { describe, expect, test } from 'vitest';
import {
  efficiencyOn,
  type MatchInput,
  matchBands,
  pressureRatioOn,
  type SpreadGroup,
  solveMatch,
  speedLineAt,
} from '../airpath/index.ts';
import { dryAir, inventedBaseline, nodesOf, plainInput } from '../airpath/match/match-input.testing.ts';
import { fitMatch, fitTogether } from './fit-match.ts';
import type { BoostedPull, FitParameterId, FitTarget, Moves } from './model.ts';
import { AS_IT_IS, movedBy } from './moves.ts';
import { withFit } from './with-fit.ts';

const SPREAD: SpreadGroup[] = [
  { key: 'baseline', parts: ['baselineAir', 'baselinePower'], factor: [[0.03], [0, 0.01]] },
  { key: 'map', parts: ['head', 'mapFlow', 'efficiency'], factor: [[0.04], [0, 0.03], [0, 0, 0.01]] },
  { key: 'slip', parts: ['slip'], factor: [[0.007]] },
  { key: 'engine', parts: ['swallowing', 'chargeHeat', 'work'], factor: [[0.02], [0, 0.1], [0, 0, 0.04]] },
];

const NODES = nodesOf(3000, 6500, 15);

function inputAt(pulleyRatio: number): MatchInput {
  const air = dryAir(99_000, 298.15);
  const plain = plainInput({ air, baseline: inventedBaseline(air, NODES) });
  return { ...plain, drive: { ...plain.drive, pulleyRatio } };
}

const BASE_RATIO = inputAt(1).drive.pulleyRatio * 2.2;

/** A pull as the match itself would make it with these moves, and readings off by the shares given. */
function pullOf(
  input: MatchInput,
  moves: Partial<Moves>,
  options: Partial<BoostedPull> & { off?: () => number } = {},
): BoostedPull {
  const { figures, engineSpeedRpm } = solveMatch(movedBy(input, { ...AS_IT_IS, ...moves }));
  const { off = () => 0, ...changes } = options;
  const read = (figure: 'boost' | 'brakePower' | 'airFlow') => {
    const whole = off();
    return Array.from(figures[figure], (value) => value * (1 + whole + 0.3 * off()));
  };
  return {
    pullId: 'pull',
    engineSpeedRpm,
    brakePower: read('brakePower'),
    boost: read('boost'),
    chargeTemperature: Array.from(figures.manifoldTemperature),
    dischargeTemperature: null,
    airFlow: read('airFlow'),
    impellerSpeedRpm: null,
    air: input.air,
    ...changes,
  };
}

function fitOf(targets: FitTarget[]) {
  const fit = fitMatch(targets);
  if (!fit.ok) throw new Error(fit.remarks[0]?.message);
  return fit.value;
}

const parameter = (fit: ReturnType<typeof fitOf>, id: FitParameterId) =>
  fit.parameters.find((one) => one.id === id)!;

describe('fitMatch', () => {
  test('a pull that is as foretold moves nothing, and nothing is left over', () => {
    const input = inputAt(BASE_RATIO);
    const fit = fitOf([{ input, spread: SPREAD, pull: pullOf(input, {}) }]);
    for (const { id, value, prior } of fit.parameters) expect(value, id).toBeCloseTo(prior.value, 6);
    for (const { figure, rms } of fit.residuals) expect(rms, figure).toBeLessThan(1e-6);
    expect(fit.readings).toEqual([]);
  });

  test('factors put into a pull are found again within their spread, and narrower than before', () => {
    const input = inputAt(BASE_RATIO);
    const put = { headScale: 1.04, swallowingScale: 1.02, chargeHeat: 1.15, workFactor: 0.95 };
    const fit = fitOf([{ input, spread: SPREAD, pull: pullOf(input, put) }]);
    for (const [id, value] of Object.entries(put)) {
      const found = parameter(fit, id as FitParameterId);
      expect(Math.abs(found.value - value), id).toBeLessThan(2 * found.spread);
      expect(found.spread, id).toBeLessThan(found.prior.spread);
    }
    expect(parameter(fit, 'workFactor').from).toContain('power');
    expect(parameter(fit, 'chargeHeat').from).toContain('charge temperature');
    expect(parameter(fit, 'slip').value).toBe(input.drive.slip);
  });

  /** None of `solveMatch`: the crossing of line and engine by halving, written down again from the textbook's formulas. */
  test('a pull made by a calculation of its own is explained, and its factors are found', () => {
    const input = inputAt(BASE_RATIO);
    const put = { head: 1.03, swallowing: 0.98, heat: 1.1, work: 0.96 };
    const made = byHand(input, put);
    const pull: BoostedPull = { ...pullOf(input, {}), ...made };
    const fit = fitOf([{ input, spread: SPREAD, pull }]);
    const found = {
      head: 'headScale',
      swallowing: 'swallowingScale',
      heat: 'chargeHeat',
      work: 'workFactor',
    } as const;
    for (const [name, id] of Object.entries(found)) {
      const { value, spread } = parameter(fit, id);
      expect(Math.abs(value - put[name as keyof typeof put]), id).toBeLessThan(2 * spread);
    }
    for (const { figure, rms } of fit.residuals)
      expect(rms, figure).toBeLessThan(figure === 'manifoldTemperature' ? 1 : 0.01);
  });

  test('the next pulley is foretold from the first, within 2.5 % of boost and 1 % of power where only factors differ', () => {
    const first = inputAt(BASE_RATIO);
    const next = inputAt(BASE_RATIO * 1.05);
    const put = { headScale: 1.03, swallowingScale: 0.97, chargeHeat: 1.1, workFactor: 0.94 };
    const fit = fitOf([{ input: first, spread: SPREAD, pull: pullOf(first, put) }]);
    const truth = pullOf(next, put);
    const foretold = solveMatch(withFit({ input: next, spread: SPREAD }, fit).input);
    truth.engineSpeedRpm.forEach((_, node) => {
      expect(Math.abs(foretold.figures.boost[node]! / truth.boost![node]! - 1)).toBeLessThan(0.025);
      expect(Math.abs(foretold.figures.brakePower[node]! / truth.brakePower[node]! - 1)).toBeLessThan(0.01);
    });
  });

  test('95 % intervals of four factors hold what was put in, in more than 90 of 100 cases of 40 seeded pulls', () => {
    const input = inputAt(BASE_RATIO);
    const normal = normals(11);
    let held = 0;
    let asked = 0;
    for (let pull = 0; pull < 40; pull++) {
      // As the prior says: air of the baseline is in swallowing and, turned round, in work.
      const air = 0.03 * normal();
      const put: Partial<Moves> = {
        headScale: 1 + 0.04 * normal(),
        flowScale: 1 + 0.03 * normal(),
        swallowingScale: 1 + air + 0.02 * normal(),
        workFactor: 1 - air + 0.04 * normal(),
      };
      const fit = fitOf([
        { input, spread: SPREAD, pull: pullOf(input, put, { airFlow: null, off: () => 0.01 * normal() }) },
      ]);
      for (const id of ['headScale', 'flowScale', 'swallowingScale', 'workFactor'] as const) {
        const { value, spread } = parameter(fit, id);
        asked += 1;
        if (Math.abs(value - put[id]!) <= 1.96 * spread) held += 1;
      }
    }
    expect(held / asked).toBeGreaterThan(0.9);
  });

  test('slip is moved only where the shaft’s speed was logged, and then it is seen', () => {
    const input = inputAt(BASE_RATIO);
    const slipping = solveMatch(movedBy(input, { ...AS_IT_IS, slip: 0.04 }));
    const shaft = Array.from(slipping.figures.impellerSpeedRpm);
    const put = { slip: 0.04 };
    const without = fitOf([{ input, spread: SPREAD, pull: pullOf(input, put) }]);
    expect(parameter(without, 'slip').value).toBe(input.drive.slip);
    expect(without.remarks.some(({ message }) => /head.*slip|slip.*head/.test(message))).toBe(true);
    const logged = fitOf([{ input, spread: SPREAD, pull: pullOf(input, put, { impellerSpeedRpm: shaft }) }]);
    expect(parameter(logged, 'slip').value).toBeCloseTo(input.drive.slip + 0.04, 2);
    expect(logged.readings.find(({ id }) => id === 'slip')?.strength).toBe('seen');
  });

  test('a charge that gets hotter pull by pull is read as soak', () => {
    const input = inputAt(BASE_RATIO);
    const hotter = (by: number, pullId: string) => {
      const pull = pullOf(input, {});
      return { ...pull, pullId, chargeTemperature: pull.chargeTemperature!.map((one) => one + by) };
    };
    const targets = [0, 3, 6].map((by, place) => ({
      input,
      spread: SPREAD,
      pull: hotter(by, `pull ${place}`),
    }));
    expect(fitOf(targets).readings.map(({ id }) => id)).toEqual(['soak']);
    expect(fitOf(targets.reverse()).readings).toEqual([]);
  });

  test('power that lacks while the air is there is read as retard, with what would settle it', () => {
    const input = inputAt(BASE_RATIO);
    const fit = fitOf([{ input, spread: SPREAD, pull: pullOf(input, { workFactor: 0.9 }) }]);
    const reading = fit.readings.find(({ id }) => id === 'retard');
    expect(reading?.strength).toBe('possible');
    expect(reading?.wouldSettle?.text).toMatch(/spark/i);
  });

  test('boost that is low at all speeds, with the engine swallowing as before, is read as a leak; less of it is not', () => {
    const input = inputAt(BASE_RATIO);
    const leaking = (headScale: number) =>
      fitOf([{ input, spread: SPREAD, pull: pullOf(input, { headScale }) }]).readings.map(({ id }) => id);
    expect(leaking(0.9)).toContain('leak');
    expect(leaking(0.98)).not.toContain('leak');
    const real = fitOf([
      { input, spread: SPREAD, pull: pullOf({ ...input, bypass: { state: 'leaking', leak: 0.2 } }, {}) },
    ]);
    expect(real.readings.map(({ id }) => id)).toContain('leak');
  });

  test('boost that sags at the top is read as slip, seen where the air is colder with it, and not where it is as warm', () => {
    const input = inputAt(BASE_RATIO);
    const { engineSpeedRpm, figures } = solveMatch(input);
    const slipped = solveMatch(movedBy(input, { ...AS_IT_IS, slip: 0.09 })).figures;
    const at = (whole: Float64Array, part: Float64Array) =>
      engineSpeedRpm.map((speed, node) => (speed > 6000 ? part[node]! : whole[node]!));
    const sagging: BoostedPull = {
      ...pullOf(input, {}),
      boost: at(figures.boost, slipped.boost),
      chargeTemperature: at(figures.manifoldTemperature, slipped.manifoldTemperature),
      brakePower: at(figures.brakePower, slipped.brakePower),
      airFlow: at(figures.airFlow, slipped.airFlow),
    };
    const slipOf = (pull: BoostedPull) =>
      fitOf([{ input, spread: SPREAD, pull }]).readings.find(({ id }) => id === 'slip')?.strength;
    expect(slipOf(sagging)).toBe('seen');
    expect(slipOf({ ...sagging, chargeTemperature: null })).toBe('possible');
    expect(
      slipOf({ ...sagging, chargeTemperature: Array.from(figures.manifoldTemperature) }),
    ).toBeUndefined();
    expect(slipOf(pullOf(input, {}))).toBeUndefined();
  });

  test('air by the meter that boost and power do not agree with is said', () => {
    const input = inputAt(BASE_RATIO);
    const codes = (share: number) => {
      const pull = pullOf(input, {});
      const airFlow = pull.airFlow!.map((one) => one * share);
      return fitOf([{ input, spread: SPREAD, pull: { ...pull, airFlow } }]).remarks.map(({ code }) => code);
    };
    expect(codes(0.85)).toContain('air-stands-away');
    expect(codes(1)).not.toContain('air-stands-away');
  });

  test('nothing to fit is refused with what to do', () => {
    const input = inputAt(BASE_RATIO);
    const pull = pullOf(input, {});
    expect(fitMatch([])).toMatchObject({ ok: false, remarks: [{ code: 'nothing-fitted' }] });
    const elsewhere = { ...pull, engineSpeedRpm: pull.engineSpeedRpm.map((speed) => speed + 9000) };
    expect(fitMatch([{ input, spread: SPREAD, pull: elsewhere }])).toMatchObject({
      ok: false,
      remarks: [{ code: 'nothing-to-fit' }],
    });
    const other = { ...input, baseline: { ...input.baseline, pullIds: ['another'] } };
    expect(
      fitMatch([
        { input, spread: SPREAD, pull },
        { input: other, spread: SPREAD, pull },
      ]),
    ).toMatchObject({ ok: false, remarks: [{ code: 'fit-on-two-engines' }] });
  });
});

describe('fitTogether', () => {
  const base = inputAt(BASE_RATIO);
  const cam: MatchInput = {
    ...base,
    baseline: {
      ...base.baseline,
      origin: 'scaled',
      airFlow: base.baseline.airFlow.map((one) => 1.05 * one),
      brakePower: base.baseline.brakePower.map((one) => 1.05 * one),
    },
  };
  const put = { headScale: 1.03, chargeHeat: 1.1 };
  const targets = (input: MatchInput, pullId: string, own: Partial<Moves> = {}): FitTarget[] => [
    { input, spread: SPREAD, pull: { ...pullOf(input, { ...put, ...own }), pullId } },
  ];
  const fits = fitTogether([targets(base, 'a'), targets(cam, 'b', { swallowingScale: 1.03 })]);
  if (!fits.ok) throw new Error(fits.remarks[0]?.message);
  const [a, b] = fits.value as [ReturnType<typeof fitOf>, ReturnType<typeof fitOf>];

  test('what belongs to the unit is one for both, what a cam swallows is its own', () => {
    expect(a.parameters.find(({ id }) => id === 'chargeHeat')).toEqual(
      b.parameters.find(({ id }) => id === 'chargeHeat'),
    );
    const swallowed = parameter(b, 'swallowingScale').value / parameter(a, 'swallowingScale').value;
    expect(Math.abs(swallowed - 1.03)).toBeLessThan(0.01);
    expect([a.pullIds, a.restsOn, b.pullIds]).toEqual([['a'], ['a', 'b'], ['b']]);
    expect(a.remarks.map(({ code }) => code)).toContain('fitted-together');
  });

  test('the band of their difference is narrower than that of two fits made apart, and holds what was put in', () => {
    const width = (one: ReturnType<typeof fitOf>, other: ReturnType<typeof fitOf>) => {
      const cases = [
        withFit({ input: base, spread: SPREAD }, one),
        withFit({ input: cam, spread: SPREAD }, other),
      ];
      const { low, high } = matchBands(cases, { draws: 400, seed: 3 }).differences[1]!.boost;
      return { low: low[12]!, high: high[12]! };
    };
    const together = width(a, b);
    const apart = width(fitOf(targets(base, 'a')), fitOf(targets(cam, 'b', { swallowingScale: 1.03 })));
    expect(together.high - together.low).toBeLessThan(0.75 * (apart.high - apart.low));
    const truth = pullOf(cam, { ...put, swallowingScale: 1.03 }).boost![12]! - pullOf(base, put).boost![12]!;
    expect(truth).toBeGreaterThan(together.low);
    expect(truth).toBeLessThan(together.high);
  });

  test('a combination fitted with no other takes the fit of both, and its draws', () => {
    const next = withFit({ input: inputAt(BASE_RATIO * 1.05), spread: SPREAD }, a);
    expect(next.spread.map(({ key }) => key)).toContain(a.key);
    expect(a.key).toBe(b.key);
    expect(a.carried).toEqual(b.carried);
  });

  test('two maps, or an empty combination, are refused', () => {
    const other = {
      ...base,
      compressor: { ...base.compressor, map: { ...base.compressor.map, mark: 'x' } },
    };
    expect(fitTogether([targets(base, 'a'), targets(other, 'b')])).toMatchObject({
      ok: false,
      remarks: [{ code: 'fit-on-two-engines' }],
    });
    expect(fitTogether([targets(base, 'a'), []])).toMatchObject({
      ok: false,
      remarks: [{ code: 'nothing-fitted' }],
    });
  });
});

describe('withFit', () => {
  const input = inputAt(BASE_RATIO);
  const fit = fitOf([{ input, spread: SPREAD, pull: pullOf(input, { headScale: 1.03, chargeHeat: 1.2 }) }]);

  test('the fit’s spread stands in place of what it took in; nothing is counted twice', () => {
    const { spread } = withFit({ input, spread: SPREAD }, fit);
    expect(spread.map(({ key }) => key)).toEqual([fit.key]);
    const { parts, shapes } = spread[0]!;
    const wholes = parts.filter((_, line) => shapes![line] === null);
    expect(wholes).toEqual(['head', 'mapFlow', 'swallowing', 'chargeHeat', 'work', 'slip']);
  });

  test('at another pulley it has a set-up of its own, and head and work are opened by what the speed is changed', () => {
    const opened = (ratio: number) => {
      const { spread } = withFit({ input: inputAt(BASE_RATIO * ratio), spread: SPREAD }, fit);
      expect(spread.map(({ key }) => key.split(' ')[0])).toEqual(['fit', 'own', 'fit']);
      const { parts, factor } = spread[2]!;
      expect(parts).toEqual(['head', 'work']);
      return factor.map((line, place) => line[place]!);
    };
    const [near, far] = [opened(1.05), opened(1.05 ** 2)];
    expect(far[0]! / near[0]!).toBeCloseTo(2, 9);
    expect(far[1]! / near[1]!).toBeCloseTo(2, 9);
  });

  test('work that was lost under boost is lost twice as much at twice the boost; a gain stays', () => {
    // Without an error of the baseline's air, which can look like lost work.
    const certain = SPREAD.slice(1);
    const faster = inputAt(BASE_RATIO * Math.SQRT2);
    const fitted = (workFactor: number) =>
      fitOf([{ input, spread: certain, pull: pullOf(input, { workFactor }) }]);
    const losing = fitted(0.94);
    const lost = 1 - losing.carried.by.workFactor * input.work.factor;
    expect(1 - withFit({ input: faster, spread: certain }, losing).input.work.factor).toBeCloseTo(
      2 * lost,
      9,
    );
    const gaining = fitted(1.05);
    expect(withFit({ input: faster, spread: certain }, gaining).input.work.factor).toBeCloseTo(
      gaining.carried.by.workFactor * input.work.factor,
      9,
    );
  });

  test('with another cooler the charge’s heat goes back to its prior, with its own spread', () => {
    const cooled: MatchInput = {
      ...input,
      cooler: {
        by: 'water',
        effectiveness: 0.8,
        loss: { pressureDifference: 0, atFlow: 1, atDensity: 1 },
        coolantTemperature: 291,
      },
    };
    const moved = withFit({ input: cooled, spread: SPREAD }, fit);
    expect(moved.input.charge.heatFactor).toBe(cooled.charge.heatFactor);
    expect(moved.input.compressor.headScale).not.toBe(cooled.compressor.headScale);
    const groups = moved.spread.filter(({ parts }) => parts.includes('chargeHeat')).map(({ key }) => key);
    expect(groups).toEqual(['engine']);
  });
});

/** Boost, power, air and charge temperature of an uncooled engine without losses. */
function byHand(
  { baseline, air, gas, drive, compressor, compressionRatio, swallowing }: MatchInput,
  put: { head: number; swallowing: number; heat: number; work: number },
) {
  const exponent = gas.gasConstant / gas.specificHeat;
  const { reference } = compressor.map;
  const highest = Math.max(...baseline.airFlow);
  const rows = baseline.engineSpeedRpm.map((speed, node) => {
    const turns = speed * drive.pulleyRatio * drive.stepUp * (1 - drive.slip);
    const root = Math.sqrt(air.temperature / reference.temperature);
    const line = speedLineAt(compressor.map, turns / root);
    const own = {
      flow: baseline.airFlow[node]!,
      pressure: baseline.manifoldPressure[node]!,
      temperature: baseline.manifoldTemperature[node]!,
    };
    const at = (flow: number) => {
      const corrected = (flow * root * reference.pressure) / air.pressure;
      const head = put.head * (pressureRatioOn(line, corrected) ** exponent - 1);
      const hot = air.temperature * (1 + head / efficiencyOn(line, corrected));
      const pressure = air.pressure * (1 + head) ** (1 / exponent);
      const charge = air.temperature + put.heat * (hot - air.temperature);
      const exhaust = (of: number) =>
        air.pressure * (1 + (swallowing.exhaustPressureRatio - 1) * (of / highest) ** 2);
      const term = (over: number) => 1 + (1 - over) / (1.4 * (compressionRatio! - 1));
      const swallowed =
        (put.swallowing *
          own.flow *
          (pressure / own.pressure) *
          (own.temperature / charge) *
          Math.sqrt(charge / own.temperature) *
          term(exhaust(flow) / pressure)) /
        term(exhaust(own.flow) / own.pressure);
      return { swallowed, pressure, charge, hot };
    };
    let low = 0.02;
    let high = (line.chokeFlow * air.pressure) / (root * reference.pressure);
    for (let halving = 0; halving < 60; halving++) {
      const middle = (low + high) / 2;
      if (at(middle).swallowed > middle) low = middle;
      else high = middle;
    }
    const { pressure, charge, hot } = at(low);
    const friction = baseline.frictionPower[node]!;
    const indicated = ((baseline.brakePower[node]! + friction) * low * put.work) / own.flow;
    const driving = (low * gas.specificHeat * (hot - air.temperature)) / drive.mechanicalEfficiency;
    return { boost: pressure - air.pressure, charge, flow: low, power: indicated - friction - driving };
  });
  return {
    boost: rows.map(({ boost }) => boost),
    chargeTemperature: rows.map(({ charge }) => charge),
    airFlow: rows.map(({ flow }) => flow),
    brakePower: rows.map(({ power }) => power),
  };
}

/** Seeded standard normals: a multiplicative generator (Park and Miller, from memory) and the method of Box and Muller. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
