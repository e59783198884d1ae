import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitMap } from '../map/fit-map.ts';
import { pressureRatioOn, speedLineAt } from '../map/speed-line.ts';
import type { FittedMap, MatchCurve, MatchFigure, MatchInput, SpreadGroup } from '../model.ts';
import { lossFrom } from '../way/loss.ts';
import { matchBands } from './match-bands.ts';
import { dryAir, inventedBaseline, nodesOf, plainInput, RATED_MAP, ratedMap } from './match-input.testing.ts';
import { solveMatch } from './solve-match.ts';

/** What holds of any match whatever the engine: directions that a mechanic would swear by. */
const RUNS = { numRuns: 60, seed: 20_26 };
const SPEEDS = nodesOf(2500, 6500, 5);

/** A table read off the rated stage, so that both kinds of map are tried. */
const tableMap = ((): FittedMap => {
  const points = [26_000, 33_000, 40_000, 47_000].flatMap((speedRpm) => {
    const line = speedLineAt(ratedMap(), speedRpm);
    return [0, 0.2, 0.4, 0.6, 0.8].map((share) => {
      const flow = line.surgeFlow + share * (line.chokeFlow - line.surgeFlow);
      return {
        flow,
        speedRpm,
        pressureRatio: pressureRatioOn(line, flow),
        efficiency: 0.76 - 0.25 * share ** 2,
      };
    });
  });
  const map = fitMap({ ...RATED_MAP, id: 'table', form: 'points', points, leftEnd: 'surge' });
  if (!map.ok) throw new Error(map.remarks[0]?.message);
  return map.value;
})();

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const loss = (most: number) =>
  range(0, most).map((pressureDifference) => lossFrom({ pressureDifference, atFlow: 0.4, atDensity: 1.4 }));

/** Any engine of 3 to 9 litres, any pulley, weather from a cold harbour to a hot pass. */
const inputs = fc
  .record({
    air: fc
      .tuple(range(65_000, 103_000), range(258, 318))
      .map(([pressure, kelvin]) => dryAir(pressure, kelvin)),
    share: range(0.55, 1.6),
    isTable: fc.boolean(),
    ratio: range(1.5, 2.3),
    slip: range(0, 0.04),
    inletLoss: loss(2000),
    pipeLoss: loss(2000),
    throttleLoss: loss(4000),
    effectiveness: fc.option(range(0.2, 0.95)),
    leak: fc.option(range(0.005, 0.1)),
    heatFactor: range(0.8, 1.3),
    evaporationCooling: fc.constantFrom(0, 20),
    exhaustPressureRatio: range(1, 1.2),
    heatExponent: fc.constantFrom(0, 0.5),
    pressureTermRatio: fc.constantFrom(null, 1.4),
    frictionRise: range(0, 0.3),
    gasExchange: fc.boolean(),
    headScale: range(0.85, 1.15),
  })
  .map((some): MatchInput => {
    const base = plainInput();
    const plain = inventedBaseline(dryAir(99_000, 298.15), SPEEDS);
    const times = (values: number[]) => values.map((value) => value * some.share);
    return plainInput({
      air: some.air,
      displacement: 5.7e-3 * some.share,
      baseline: {
        ...plain,
        brakePower: times(plain.brakePower),
        airFlow: times(plain.airFlow),
        frictionPower: times(plain.frictionPower),
      },
      compressor: {
        ...base.compressor,
        map: some.isTable ? tableMap : ratedMap(),
        headScale: some.headScale,
      },
      drive: { ...base.drive, pulleyRatio: some.ratio, slip: some.slip },
      inletLoss: some.inletLoss,
      pipeLoss: some.pipeLoss,
      throttleLoss: some.throttleLoss,
      bypass: some.leak === null ? { state: 'shut', leak: 0 } : { state: 'leaking', leak: some.leak },
      cooler:
        some.effectiveness === null
          ? null
          : {
              by: 'air',
              effectiveness: some.effectiveness,
              coolantTemperature: null,
              loss: lossFrom({ pressureDifference: 0, atFlow: 1 }),
            },
      charge: { heatFactor: some.heatFactor, evaporationCooling: some.evaporationCooling, fuelVapour: 0 },
      swallowing: {
        scale: 1,
        exhaustPressureRatio: some.exhaustPressureRatio,
        pressureTermRatio: some.pressureTermRatio,
        heatExponent: some.heatExponent,
        breathing: null,
      },
      work: { factor: 1, gasExchange: some.gasExchange, frictionRise: some.frictionRise },
    });
  });

/** Both matches and what is held of them at each node. */
function held(
  before: MatchInput,
  after: MatchInput,
  check: (one: (figure: MatchFigure) => number, other: (figure: MatchFigure) => number, node: number) => void,
): void {
  const [one, other] = [solveMatch(before), solveMatch(after)];
  const at =
    ({ figures }: MatchCurve, node: number) =>
    (figure: MatchFigure) =>
      figures[figure][node]!;
  for (const node of SPEEDS.keys()) check(at(one, node), at(other, node), node);
}

const holds = (of: (input: MatchInput) => void) => fc.assert(fc.property(inputs, of), RUNS);

describe('whatever the engine', () => {
  test('a higher ratio turns the impeller faster by just that, and never makes less boost', () =>
    holds((input) => {
      const drive = { ...input.drive, pulleyRatio: 1.03 * input.drive.pulleyRatio };
      held(input, { ...input, drive }, (one, other) => {
        expect(other('impellerSpeedRpm') / one('impellerSpeedRpm')).toBeCloseTo(1.03, 12);
        expect(other('dischargePressure')).toBeGreaterThanOrEqual(one('dischargePressure') * (1 - 1e-9));
      });
    }));

  test('more slip never makes more boost', () =>
    holds((input) => {
      const drive = { ...input.drive, slip: input.drive.slip + 0.02 };
      held(input, { ...input, drive }, (one, other) => {
        expect(other('manifoldPressure')).toBeLessThanOrEqual(one('manifoldPressure') * (1 + 1e-9));
      });
    }));

  test('a better cooler that costs no pressure never costs air, nor power but for pumping', () =>
    holds((input) => {
      const { cooler } = input;
      if (cooler === null) return;
      const better = { ...cooler, effectiveness: Math.min(1, cooler.effectiveness + 0.05) };
      // What lower manifold pressure costs in pumping is another matter.
      const plain = { ...input, work: { ...input.work, gasExchange: false } };
      held(plain, { ...plain, cooler: better }, (one, other) => {
        // Where the discharge is colder than the ambient air a cooler heats.
        if (one('dischargeTemperature') < input.air.temperature) return;
        expect(other('airFlow')).toBeGreaterThanOrEqual(one('airFlow') * (1 - 1e-9));
        expect(other('brakePower')).toBeGreaterThanOrEqual(one('brakePower') - 1e-6 * one('indicatedPower'));
      });
    }));

  test('denser air at the same temperature makes more power', () =>
    holds((input) => {
      const lower = dryAir(1.05 * input.air.pressure, input.air.temperature);
      held(input, { ...input, air: lower }, (one, other) => {
        expect(other('brakePower')).toBeGreaterThan(one('brakePower'));
      });
    }));

  test('breathing better takes more air; pressure behind the compressor goes the way the line slopes', () =>
    holds((input) => {
      const plain = { ...input, inletLoss: lossFrom({ pressureDifference: 0, atFlow: 1 }) };
      const breathing = SPEEDS.map(() => 1.001);
      const seen = solveMatch(plain).state;
      held(plain, { ...plain, swallowing: { ...plain.swallowing, breathing } }, (one, other, node) => {
        if (seen[node] === 'choked' || Math.abs(one('slopeOfLine')) < 1e-3) return;
        expect(other('airFlow')).toBeGreaterThan(one('airFlow'));
        expect(Math.sign(other('dischargePressure') - one('dischargePressure'))).toBe(
          Math.sign(one('slopeOfLine')),
        );
      });
    }));

  test('the drive never gives power, margins are shares, and what is not known has a state', () =>
    holds((input) => {
      const curve = solveMatch(input);
      SPEEDS.forEach((_, node) => {
        const { figures, state } = curve;
        expect(figures.drivePower[node]).toBeGreaterThanOrEqual(0);
        expect(figures.chokeMargin[node]).toBeGreaterThanOrEqual(0);
        expect(figures.chokeMargin[node]).toBeLessThanOrEqual(1);
        expect(figures.surgeMargin[node]).toBeLessThan(1);
        const isKnown = Number.isFinite(figures.slopeOfLine[node]) || state[node] === 'choked';
        expect(isKnown).toBe(true);
        expect(Number.isFinite(figures.efficiency[node])).toBe(figures.pressureRatio[node]! > 1);
      });
    }));
});

const SPREAD: SpreadGroup[] = [
  { key: 'baseline', parts: ['baselineAir', 'baselinePower'], factor: [[0.03], [0, 0.01]] },
  { key: 'map', parts: ['head', 'mapFlow', 'efficiency'], factor: [[0.04], [0, 0.04], [0, 0, 0.02]] },
  { key: 'drive', parts: ['slip'], factor: [[0.007]] },
];

test('bands hold their curve, come again from their seed, and two of one kind do not differ', () => {
  fc.assert(
    fc.property(inputs, (input) => {
      const { figures } = solveMatch(input);
      const one = { input, spread: SPREAD };
      const bands = matchBands([one, { ...one }], { draws: 200, seed: 5 });
      SPEEDS.forEach((_, node) => {
        for (const figure of ['boost', 'brakePower', 'airFlow', 'drivePower', 'chokeMargin'] as const) {
          const { low, high } = bands.cases[0]![figure];
          const slack = 1e-6 * Math.abs(figures[figure][node]!) + 1e-6;
          expect(low[node]).toBeLessThanOrEqual(figures[figure][node]! + slack);
          expect(high[node]).toBeGreaterThanOrEqual(figures[figure][node]! - slack);
          expect(bands.differences[1]![figure].low[node]).toBe(0);
          expect(bands.differences[1]![figure].high[node]).toBe(0);
        }
        expect(bands.cases[0]!.chokeMargin.high[node]).toBeLessThanOrEqual(1);
      });
      expect(matchBands([one, { ...one }], { draws: 200, seed: 5 })).toEqual(bands);
    }),
    { numRuns: 12, seed: 20_26 },
  );
});
