import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inventedPoints, inventedPull, inventedSweep, inventedTorque } from './invented-pull.testing.ts';
import type { Pull, Recipe, Treatment } from './model.ts';
import { defaultRecipe } from './recipe.ts';
import { PLAIN_TREATMENT, recipeFor } from './treatment.ts';
import { viewPull } from './view-pull.ts';

const observed = defaultRecipe('observed');
const { channels } = inventedSweep({
  torqueAt: inventedTorque,
  more: (speed) => ({ lambda: 0.9 - 1e-5 * speed }),
});
const sweep = { momentOfInertia: 0.4, inertiaCompensated: 'no' } as const;
const read = (treatment: Partial<Treatment>, changes: Partial<Pull> = {}): Pull =>
  inventedPull(channels, { sweep, treatment: { ...PLAIN_TREATMENT, ...treatment }, ...changes });
const codes = (pull: Pull, recipe = observed) => viewPull(pull, recipe).remarks.map((one) => one.code);
const messageOf = (pull: Pull, code: string) =>
  viewPull(pull, observed).remarks.find((one) => one.code === code)?.message;

const anyTreatment: fc.Arbitrary<Treatment> = fc.record({
  lags: fc.oneof(fc.constant({}), fc.record({ lambda: fc.double({ min: -1, max: 1, noNaN: true }) })),
  windowRpm: fc.constantFrom(null, [3000, 6000] as [number, number], [3500, 5000] as [number, number]),
  binWidthRpm: fc.constantFrom(null, 50, 100, 175),
  addInertia: fc.boolean(),
});

describe('the recipe a pull is viewed by', () => {
  test('a pull viewed plainly is as one without a treatment viewed by a recipe that says the same', () => {
    fc.assert(
      fc.property(anyTreatment, (treatment) => {
        const recipe: Recipe = {
          ...observed,
          ...treatment,
          binWidthRpm: treatment.binWidthRpm ?? 'adapted',
        };
        const own = viewPull(read(treatment), observed);
        const asked = viewPull(read({}), recipe);
        expect(own.recipe).toEqual(recipe);
        expect(own.curve).toEqual(asked.curve);
        expect(own.window).toEqual(asked.window);
        expect(own.peakPower).toEqual(asked.peakPower);
      }),
      { seed: 20260314, numRuns: 25 },
    );
  });

  test('what the recipe asks for wins, field by field', () => {
    const pull = read({ lags: { lambda: 0.3, boost: 0.1 }, windowRpm: [3000, 5000], binWidthRpm: 200 });
    expect(
      recipeFor(pull, { ...observed, lags: { lambda: 0 }, windowRpm: [3500, 6000], binWidthRpm: 100 }),
    ).toEqual({
      correction: 'observed',
      lags: { lambda: 0, boost: 0.1 },
      windowRpm: [3500, 6000],
      binWidthRpm: 100,
      addInertia: false,
    });
  });

  test('viewed again by the recipe of its view, a pull looks the same', () => {
    const pull = read({ lags: { lambda: 0.3 }, windowRpm: [3000, 5000], binWidthRpm: 200, addInertia: true });
    const view = viewPull(pull, observed);
    expect(viewPull(pull, view.recipe)).toEqual(view);
  });
});

describe('what is in force is named', () => {
  test('nothing for a plain pull', () => {
    expect(codes(read({})).filter((code) => /-set|lag|inertia-added/.test(code))).toEqual([]);
  });

  test('lag, window, bins and inertia each', () => {
    const pull = read({ lags: { lambda: 0.3 }, windowRpm: [3000, 6500], binWidthRpm: 100, addInertia: true });
    expect(messageOf(pull, 'lag-set')).toMatch(/lambda read 0\.3 s earlier/);
    expect(messageOf(read({ lags: { lambda: -0.25 } }), 'lag-set')).toMatch(/lambda read 0\.25 s later/);
    expect(messageOf(pull, 'window-set')).toMatch(/^Window set by hand to 3,000-6,500 rpm/);
    expect(messageOf(pull, 'bin-width-set')).toBe('Bins set by hand to 100 rpm.');
    expect(codes(pull)).toContain('inertia-added');
  });

  test('a width that something else asked for is not said to be set by hand', () => {
    expect(codes(read({ binWidthRpm: 100 }), { ...observed, binWidthRpm: 250 })).not.toContain(
      'bin-width-set',
    );
    expect(codes(read({}), { ...observed, binWidthRpm: 250 })).not.toContain('bin-width-set');
  });

  test('what has no effect says why', () => {
    expect(messageOf(read({ lags: { exhaustTemperature: 0.5 } }), 'lag-without-channel')).toMatch(
      /0\.5 s is set for exhaust, but the pull has no such channel/,
    );
    const untimed = inventedPull(inventedPoints([3000, 3500, 4000, 4500], inventedTorque), {
      treatment: { ...PLAIN_TREATMENT, lags: { torque: 0.3 }, binWidthRpm: 100 },
    });
    expect(codes(untimed)).toEqual(expect.arrayContaining(['lag-needs-time', 'bin-width-not-used']));
    expect(codes(untimed)).not.toContain('lag-set');
  });
});

test('a printed peak has no rows to read: its treatment changes nothing', () => {
  const summary = { peakPower: 250e3, peakPowerRpm: 6000, peakTorque: null, peakTorqueRpm: null };
  const printed = (treatment: Treatment) =>
    viewPull(inventedPull([], { form: 'summary', summary, treatment }), observed);
  expect(printed({ ...PLAIN_TREATMENT, windowRpm: [3000, 4000] })).toEqual(printed(PLAIN_TREATMENT));
});
