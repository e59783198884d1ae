import { expect, test } from 'vitest';
import type { ViewedPull } from '../airpath/index.ts';
import { dryAir, inventedBaseline, nodesOf } from '../airpath/match/match-input.testing.ts';
import { defaultRecipe, viewPull } from '../pull/index.ts';
import { inventedChannel, inventedPull } from '../pull/invented-pull.testing.ts';
import { scaleBaseline } from './scale-baseline.ts';

const SPEEDS = nodesOf(3000, 6500, 15);
const OF = {
  ...inventedBaseline(dryAir(99_000, 298.15), SPEEDS),
  origin: 'measured' as const,
  pullIds: ['bare'],
};

/** A step test whose torque is 500 N·m times a share. */
function pullAt(id: string, share: (speed: number) => number, changes = {}): ViewedPull {
  const pull = inventedPull(
    [
      inventedChannel('engineSpeed', SPEEDS),
      inventedChannel(
        'torque',
        SPEEDS.map((speed) => 500 * share(speed)),
      ),
    ],
    { id, name: id, ...changes },
  );
  return { pull, view: viewPull(pull, defaultRecipe('observed')) };
}

const pairOf = (before: ViewedPull[], after: ViewedPull[], underBoost = true) => ({
  of: OF,
  nearest: 'base cam without supercharger',
  pair: { before, after, what: 'the longer cam', underBoost },
});

test('power is scaled node by node by what the pair gained, and the air with the indicated power', () => {
  const gain = (speed: number) => (speed > 5000 ? 1.06 : 0.98);
  const scaled = scaleBaseline(pairOf([pullAt('a', () => 1)], [pullAt('b', gain)]));
  if (!scaled.ok) throw new Error(scaled.remarks[0]?.message);
  const { baseline, power } = scaled.value;
  expect(baseline.origin).toBe('scaled');
  expect(baseline.pullIds).toEqual(['bare', 'a', 'b']);
  baseline.engineSpeedRpm.forEach((speed, node) => {
    const own = OF.brakePower[node]!;
    expect(baseline.brakePower[node]! / own).toBeCloseTo(gain(speed), 9);
    const indicated = (own * gain(speed) + OF.frictionPower[node]!) / (own + OF.frictionPower[node]!);
    expect(baseline.airFlow[node]! / OF.airFlow[node]!).toBeCloseTo(indicated, 9);
    expect(power.low[node]!).toBeLessThan(baseline.brakePower[node]!);
    expect(power.high[node]!).toBeGreaterThan(baseline.brakePower[node]!);
  });
  expect(scaled.value.basis.text).toMatch(/^Scaled, not measured/);
});

test('the band of one pull each: 0.3 of the gain under boost and 1 % for the pair, together', () => {
  const widthOf = (underBoost: boolean) => {
    const scaled = scaleBaseline(pairOf([pullAt('a', () => 1)], [pullAt('b', () => 1.1)], underBoost));
    if (!scaled.ok) throw new Error(scaled.remarks[0]?.message);
    return Math.log(scaled.value.power.high[3]! / scaled.value.baseline.brakePower[3]!) / 1.96;
  };
  expect(widthOf(true)).toBeCloseTo(Math.hypot(0.3 * Math.log(1.1), 0.01), 9);
  expect(widthOf(false)).toBeCloseTo(0.01, 9);
});

test('repeats that scatter make the band wider', () => {
  const of = (shares: number[]) => {
    const scaled = scaleBaseline(
      pairOf(
        shares.map((share, place) => pullAt(`a${place}`, () => share)),
        [pullAt('b', () => 1.05)],
      ),
    );
    if (!scaled.ok) throw new Error(scaled.remarks[0]?.message);
    return scaled.value.power.high[0]! / scaled.value.baseline.brakePower[0]!;
  };
  expect(of([0.97, 1.03])).toBeGreaterThan(of([1, 1]));
});

test.each([
  [
    'a pull with the supercharger against one without',
    [pullAt('a', () => 1)],
    [pullAt('b', () => 1.9)],
    'pair-nonsense',
  ],
  ['no pull on one side', [], [pullAt('b', () => 1.1)], 'no-pair'],
  ['one pull on both sides', [pullAt('a', () => 1)], [pullAt('a', () => 1)], 'pair-of-one'],
  [
    'a factor that nobody knows',
    [pullAt('a', () => 1, { carried: { standard: 'unknown', factor: null } })],
    [pullAt('b', () => 1.1)],
    'pair-factor-unknown',
  ],
])('%s is refused', (_, before, after, code) => {
  expect(scaleBaseline(pairOf(before, after))).toMatchObject({ ok: false, remarks: [{ code }] });
});
