import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airState } from '../../air/index.ts';
import { absolutePressure, temperature } from '../../quantity/index.ts';
import { MATCH_FIGURES, type MatchInput } from '../model.ts';
import { dryAir, inventedBaseline, plainInput } from './match-input.testing.ts';
import { nodeSolver } from './match-node.ts';
import { surplusAtFlow } from './match-path.ts';
import { planMatch } from './match-plan.ts';
import { solveMatch } from './solve-match.ts';

const BALANCE = 1e-9;
const off = (value: number, expected: number) => Math.abs(value - expected) / Math.abs(expected);
const loss = (pressureDifference: number, atDensity = 1.2) => ({
  pressureDifference,
  atFlow: 0.4,
  atDensity,
});

/** Inputs far and wide: cooled or not, leaking, hot, high, with every term on or off. */
const anyInput = fc
  .record({
    pressure: fc.double({ min: 70_000, max: 104_000, noNaN: true }),
    kelvin: fc.double({ min: 260, max: 320, noNaN: true }),
    ratio: fc.double({ min: 1.2, max: 2.6, noNaN: true }),
    losses: fc.tuple(...Array.from({ length: 4 }, () => fc.double({ min: 0, max: 6000, noNaN: true }))),
    effectiveness: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
    leak: fc.option(fc.double({ min: 0, max: 0.2, noNaN: true })),
    headScale: fc.double({ min: 0.85, max: 1.15, noNaN: true }),
    constantEfficiency: fc.option(fc.double({ min: 0.55, max: 0.85, noNaN: true })),
    heatFactor: fc.double({ min: 0.6, max: 1.3, noNaN: true }),
    evaporationCooling: fc.double({ min: 0, max: 30, noNaN: true }),
    pressureTermRatio: fc.option(fc.constant(1.4)),
    heatExponent: fc.constantFrom(0, 0.5),
    gasExchange: fc.boolean(),
  })
  .map((any): MatchInput => {
    const base = plainInput();
    return {
      ...base,
      air: dryAir(any.pressure, any.kelvin),
      compressor: {
        ...base.compressor,
        headScale: any.headScale,
        constantEfficiency: any.constantEfficiency,
      },
      drive: { ...base.drive, pulleyRatio: any.ratio },
      inletLoss: loss(any.losses[0]!),
      pipeLoss: loss(any.losses[1]!, 1.6),
      throttleLoss: loss(any.losses[2]!, 1.6),
      bypass: any.leak === null ? { state: 'shut', leak: 0 } : { state: 'leaking', leak: any.leak },
      cooler:
        any.effectiveness === null
          ? null
          : {
              by: 'water',
              effectiveness: any.effectiveness,
              loss: loss(any.losses[3]!, 1.6),
              coolantTemperature: 285,
            },
      charge: { heatFactor: any.heatFactor, evaporationCooling: any.evaporationCooling, fuelVapour: 0.01 },
      swallowing: {
        ...base.swallowing,
        pressureTermRatio: any.pressureTermRatio,
        heatExponent: any.heatExponent,
      },
      work: { factor: 0.97, gasExchange: any.gasExchange, frictionRise: 0.02 },
    };
  });

/** Worked out from the figures alone, by the definitions in `model.ts`. */
function largestImbalance(input: MatchInput): number {
  const { figures, state } = solveMatch(input);
  const { baseline, air, gas, charge, swallowing, cooler, bypass, work } = input;
  const { specificHeat: cp, gasConstant } = gas;
  let most = 0;
  const meets = (value: number, expected: number) => {
    most = Math.max(most, off(value, expected));
  };
  const highest = Math.max(...baseline.airFlow);
  baseline.engineSpeedRpm.forEach((speed, node) => {
    if (state[node] === 'no solution') return;
    const at = (figure: (typeof MATCH_FIGURES)[number]) => figures[figure][node]!;
    const lost = (
      of: { pressureDifference: number; atFlow: number; atDensity: number },
      density: number,
      flow: number,
    ) => (of.pressureDifference * (flow / of.atFlow) ** 2 * of.atDensity) / density;

    // Mass: what leaves the compressor and is not leaked arrives; what arrives is what is swallowed.
    meets(at('airFlow'), at('compressorFlow') * (1 - bypass.leak));
    const swept = (input.displacement * speed) / 120;
    const term = (exhaust: number, manifold: number) =>
      swallowing.pressureTermRatio === null
        ? 1
        : 1 + (1 - exhaust / manifold) / (swallowing.pressureTermRatio * 8.5);
    const excess = swallowing.exhaustPressureRatio - 1;
    const exhaust0 = baseline.air.pressure * (1 + excess * (baseline.airFlow[node]! / highest) ** 2);
    const relative = (at('airFlow') / highest) * (baseline.air.pressure / air.pressure);
    const exhaust = air.pressure * (1 + excess * relative ** 2);
    const vapour = 1 - charge.fuelVapour;
    const p0 = baseline.manifoldPressure[node]!;
    const t0 = baseline.manifoldTemperature[node]!;
    const own = baseline.airFlow[node]! / (swept * ((p0 * vapour) / (gasConstant * t0)));
    const carried =
      own *
      (term(exhaust, at('manifoldPressure')) / term(exhaust0, p0)) *
      (at('manifoldTemperature') / t0) ** swallowing.heatExponent;
    meets(at('volumetricEfficiency'), carried);
    const density = (at('manifoldPressure') * vapour) / (gasConstant * at('manifoldTemperature'));
    meets(at('airFlow'), carried * swept * density);

    // Pressure: each loss at the density before it.
    meets(
      at('compressorInletPressure'),
      air.pressure -
        lost(input.inletLoss, air.pressure / (gasConstant * air.temperature), at('compressorFlow')),
    );
    meets(at('dischargePressure'), at('compressorInletPressure') * at('pressureRatio'));
    const flow = at('airFlow');
    const hot = at('dischargeTemperature');
    const afterPipe =
      at('dischargePressure') - lost(input.pipeLoss, at('dischargePressure') / (gasConstant * hot), flow);
    const afterCooler = cooler
      ? afterPipe - lost(cooler.loss, afterPipe / (gasConstant * hot), flow)
      : afterPipe;
    const beforeFuel = at('manifoldTemperature') + charge.evaporationCooling;
    meets(
      at('manifoldPressure'),
      afterCooler - lost(input.throttleLoss!, afterCooler / (gasConstant * beforeFuel), flow),
    );

    // Energy: the shaft's work is in the air; what the cooler takes out is not in the manifold.
    meets(
      at('drivePower') * input.drive.mechanicalEfficiency,
      at('compressorFlow') * cp * (hot - air.temperature),
    );
    const cooled = cooler ? hot - cooler.effectiveness * (hot - cooler.coolantTemperature!) : hot;
    meets(hot - at('coolerHeat') / (flow * cp), cooled);
    meets(beforeFuel, air.temperature + charge.heatFactor * (cooled - air.temperature));
    const head = at('pressureRatio') ** (gasConstant / cp) - 1;
    if (at('pressureRatio') > 1.001) meets(hot, air.temperature * (1 + head / at('efficiency')));

    const indicated =
      ((baseline.brakePower[node]! + baseline.frictionPower[node]!) / baseline.airFlow[node]!) *
        flow *
        work.factor +
      (work.gasExchange
        ? (at('manifoldPressure') - exhaust - ((p0 - exhaust0) * air.pressure) / baseline.air.pressure) *
          swept
        : 0);
    meets(at('indicatedPower'), indicated);
    const friction =
      baseline.frictionPower[node]! + work.frictionRise * (at('manifoldPressure') - p0) * swept;
    meets(at('frictionPower'), friction);
    meets(at('brakePower'), indicated - friction - at('drivePower'));
    meets(at('brakeTorque'), at('brakePower') / ((2 * Math.PI * speed) / 60));
  });
  return most;
}

test('mass, pressure and energy balance to 1e-9 whatever the input', () => {
  fc.assert(
    fc.property(anyInput, (input) => {
      expect(largestImbalance(input)).toBeLessThan(BALANCE);
    }),
    { seed: 20, numRuns: 150 },
  );
});

test('figures are finite where there is a solution, and the state is one of the known', () => {
  fc.assert(
    fc.property(anyInput, (input) => {
      const { figures, state } = solveMatch(input);
      state.forEach((place, node) => {
        const unknown = MATCH_FIGURES.filter((figure) => !Number.isFinite(figures[figure][node]));
        if (place === 'no solution') expect(unknown).toEqual([...MATCH_FIGURES]);
        else expect(unknown).toEqual(place === 'choked' ? ['slopeOfLine'] : []);
      });
    }),
    { seed: 21, numRuns: 150 },
  );
});

test('the flow found is the only one at which the engine could run steadily, left of the highest pressure too', () => {
  const input = plainInput();
  for (const share of [0.25, 0.5, 0.8, 1, 1.5, 2.5]) {
    const small = {
      ...input,
      baseline: { ...input.baseline, airFlow: input.baseline.airFlow.map((flow) => share * flow) },
    };
    const { figures, state } = solveMatch(small);
    const plan = planMatch(small);
    const { solve } = nodeSolver(plan, 1e-9);
    input.baseline.engineSpeedRpm.forEach((_, node) => {
      if (state[node] === 'choked') return;
      solve(node);
      const end = figures.compressorFlow[node]! / (1 - figures.chokeMargin[node]!);
      // Steady where what arrives begins to exceed what is swallowed: more flow, less pressure wanted.
      const steady: number[] = [];
      let before = surplusAtFlow(plan, 1e-6);
      for (let step = 1; step <= 400; step++) {
        const flow = (end * step) / 400;
        const surplus = surplusAtFlow(plan, flow);
        if (before < 0 && surplus >= 0) steady.push(flow);
        before = surplus;
      }
      expect(steady).toHaveLength(1);
      expect(Math.abs(steady[0]! - figures.compressorFlow[node]!)).toBeLessThanOrEqual(end / 400);
    });
  }
});

/** The engine of the baseline with nothing added: what it lost before the manifold it loses still. */
function withoutCharger(changes: Partial<MatchInput> = {}): MatchInput {
  const air = dryAir(99_000, 298.15);
  const baseline = inventedBaseline(air);
  const last = baseline.airFlow.length - 1;
  const throttleLoss = {
    pressureDifference: 2500,
    atFlow: baseline.airFlow[last]!,
    atDensity: air.pressure / (287.05 * air.temperature),
  };
  baseline.manifoldPressure = baseline.airFlow.map(
    (flow) => air.pressure - 2500 * (flow / throttleLoss.atFlow) ** 2,
  );
  return plainInput({
    air,
    baseline,
    throttleLoss,
    bypass: { state: 'open', leak: 0 },
    work: { factor: 1, gasExchange: true, frictionRise: 0.05 },
    ...changes,
  });
}

describe('zero: with charger, cooler and drive removed', () => {
  test('every point of the baseline returns to 1e-9', () => {
    const input = withoutCharger();
    const { figures, state } = solveMatch(input);
    const { baseline } = input;
    baseline.engineSpeedRpm.forEach((_, node) => {
      expect(state[node]).toBe('bypassed');
      expect(off(figures.brakePower[node]!, baseline.brakePower[node]!)).toBeLessThan(1e-9);
      expect(off(figures.airFlow[node]!, baseline.airFlow[node]!)).toBeLessThan(1e-9);
      expect(off(figures.manifoldPressure[node]!, baseline.manifoldPressure[node]!)).toBeLessThan(1e-9);
      expect(figures.manifoldTemperature[node]).toBe(baseline.manifoldTemperature[node]);
    });
  });

  test.each([0, 22])(
    'also of a manifold that warms its charge, whose throttle follows no square law, fuel cooling by %i K',
    (evaporationCooling) => {
      const plain = withoutCharger();
      const input: MatchInput = {
        ...plain,
        throttleLoss: null,
        charge: { ...plain.charge, evaporationCooling, wallTemperature: 363 },
      };
      const { baseline } = input;
      baseline.manifoldTemperature = baseline.engineSpeedRpm.map((_, node) => 304 - 0.3 * node);
      baseline.manifoldPressure = baseline.engineSpeedRpm.map((_, node) => 98_300 - 170 * node);
      const { figures } = solveMatch(input);
      baseline.engineSpeedRpm.forEach((_, node) => {
        expect(off(figures.brakePower[node]!, baseline.brakePower[node]!)).toBeLessThan(1e-9);
        expect(off(figures.manifoldPressure[node]!, baseline.manifoldPressure[node]!)).toBeLessThan(1e-9);
        expect(off(figures.manifoldTemperature[node]!, baseline.manifoldTemperature[node]!)).toBeLessThan(
          1e-9,
        );
      });
    },
  );

  test('with a bypassed charger the deficit is its losses: idling and the pressure lost on the way', () => {
    const idleTorque = 3;
    const input = withoutCharger({
      inletLoss: { pressureDifference: 4000, atFlow: 0.3, atDensity: 1.15 },
      bypass: { state: 'open', leak: 0, idleTorque },
      swallowing: {
        scale: 1,
        exhaustPressureRatio: 1,
        pressureTermRatio: null,
        heatExponent: 0,
        breathing: null,
      },
      work: { factor: 1, gasExchange: false, frictionRise: 0 },
    });
    const { figures } = solveMatch(input);
    const { baseline } = input;
    baseline.engineSpeedRpm.forEach((speed, node) => {
      const idling = idleTorque * ((2 * Math.PI * speed) / 60);
      const missing = 1 - figures.manifoldPressure[node]! / baseline.manifoldPressure[node]!;
      const indicated = baseline.brakePower[node]! + baseline.frictionPower[node]!;
      expect(missing).toBeGreaterThan(0);
      const deficit = baseline.brakePower[node]! - figures.brakePower[node]!;
      expect(off(deficit, idling + indicated * missing)).toBeLessThan(1e-9);
    });
  });

  test('at altitude air and power follow the barometer, for every pressure scales with it', () => {
    const input = withoutCharger({ work: { factor: 1, gasExchange: true, frictionRise: 0 } });
    const { figures } = solveMatch({ ...input, air: dryAir(0.82 * 99_000, 298.15) });
    input.baseline.airFlow.forEach((flow, node) => {
      expect(off(figures.airFlow[node]!, 0.82 * flow)).toBeLessThan(1e-9);
      const indicated = input.baseline.brakePower[node]! + input.baseline.frictionPower[node]!;
      expect(off(figures.indicatedPower[node]!, 0.82 * indicated)).toBeLessThan(1e-9);
    });
  });

  test('in moist air the vapour burns nothing: dry air and power go together', () => {
    const moist = airState({
      pressure: absolutePressure(99_000),
      temperature: temperature(298.15),
      humidity: { route: 'vapourPressure', pressure: absolutePressure(2500) },
      altitude: null,
    });
    if (!moist.ok) throw new Error('no air');
    const input = withoutCharger({ throttleLoss: { pressureDifference: 0, atFlow: 1, atDensity: 1 } });
    input.baseline.manifoldPressure.fill(99_000);
    input.swallowing.pressureTermRatio = null;
    input.work = { factor: 1, gasExchange: false, frictionRise: 0 };
    const { figures } = solveMatch({ ...input, air: moist.value });
    input.baseline.airFlow.forEach((_, node) => {
      const indicated = input.baseline.brakePower[node]! + input.baseline.frictionPower[node]!;
      expect(off(figures.indicatedPower[node]!, indicated * (1 - 2500 / 99_000))).toBeLessThan(1e-9);
    });
  });
});

describe('states', () => {
  test('a wheel too small is choked: its flow is the end of the line and pressure is what that gives', () => {
    const base = plainInput();
    const airFlow = base.baseline.airFlow.map((flow) => 3 * flow);
    const input = { ...base, baseline: { ...base.baseline, airFlow } };
    const { figures, state } = solveMatch(input);
    expect(largestImbalance(input)).toBeLessThan(BALANCE);
    const choked = state.flatMap((place, node) => (place === 'choked' ? [node] : []));
    expect(choked.length).toBeGreaterThan(3);
    for (const node of choked) {
      expect(figures.chokeMargin[node]).toBeCloseTo(0, 9);
      // Below ambient it restricts, and has no efficiency.
      const restricts = figures.pressureRatio[node]! <= 1;
      expect(Number.isNaN(figures.efficiency[node])).toBe(restricts);
      if (!restricts) expect(figures.efficiency[node]).toBeLessThan(0.6);
      expect(figures.manifoldPressure[node]).toBeGreaterThan(0);
    }
  });

  test('an engine too small runs left of the highest pressure, then of the surge edge', () => {
    const input = plainInput();
    const states = [0.7, 0.3].map((share) => {
      const airFlow = input.baseline.airFlow.map((flow) => share * flow);
      return new Set(solveMatch({ ...input, baseline: { ...input.baseline, airFlow } }).state);
    });
    expect([...states[0]!]).toContain('surge risk');
    expect([...states[1]!]).toContain('surge');
  });

  test('losses larger than the pressure leave a choked or strangled engine, never a number that is none', () => {
    const { figures, state } = solveMatch(
      plainInput({ inletLoss: { pressureDifference: 1e5, atFlow: 0.05, atDensity: 1.2 } }),
    );
    state.forEach((place, node) => {
      expect(place === 'no solution' || figures.manifoldPressure[node]! > 0).toBe(true);
      if (place !== 'no solution') expect(figures.airFlow[node]).toBeLessThan(0.06);
    });
  });
});

test('a wheel of 8 % more flow at every pressure serves an engine of 8 % more air as the first served the first', () => {
  const base = plainInput();
  const { figures: first } = solveMatch(base);
  const airFlow = base.baseline.airFlow.map((flow) => 1.08 * flow);
  const { figures } = solveMatch({
    ...base,
    baseline: { ...base.baseline, airFlow },
    compressor: { ...base.compressor, flowScale: 1.08 },
  });
  for (const [node, flow] of first.airFlow.entries()) {
    expect(off(figures.airFlow[node]!, 1.08 * flow)).toBeLessThan(BALANCE);
    expect(off(figures.boost[node]!, first.boost[node]!)).toBeLessThan(BALANCE);
    expect(figures.surgeMargin[node]).toBeCloseTo(first.surgeMargin[node]!, 9);
  }
});

test('fuel vapour takes room only as far as the baseline had less of it', () => {
  const input = plainInput();
  const { figures: as } = solveMatch(input);
  const wet = { ...input, charge: { ...input.charge, fuelVapour: 0.02 } };
  expect(solveMatch(wet).figures.airFlow[7]).toBeCloseTo(as.airFlow[7]!, 12);
  const { figures } = solveMatch({ ...wet, baseline: { ...input.baseline, fuelVapour: 0 } });
  expect(figures.airFlow[7]).toBeLessThan(0.995 * as.airFlow[7]!);
});
