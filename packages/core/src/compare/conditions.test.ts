import { describe, expect, test } from 'vitest';
import type { Combination, PartChange } from '../combination/index.ts';
import { testSheet } from '../combination/test-sheet.ts';
import { whatChanged } from '../combination/what-changed.ts';
import { type ChannelMeaning, defaultRecipe, type Pull, viewPull } from '../pull/index.ts';
import {
  inventedPoints,
  inventedPull,
  inventedSweep,
  inventedTorque,
} from '../pull/invented-pull.testing.ts';
import { compareCombinations } from './compare-combinations.ts';
import type { ComparedBeside, CompareOptions, ConditionDifference } from './model.ts';

const recipe = defaultRecipe('sae-j1349');
const rows = inventedPoints(
  Array.from({ length: 21 }, (_, row) => 2500 + 100 * row),
  inventedTorque,
);

let made = 0;
function pullOf(changes: Partial<Pull> = {}, channels = rows): Pull {
  made += 1;
  return inventedPull(channels, { id: `pull ${made}`, name: `pull ${made}`, ...changes });
}

const logged = (more: Partial<Record<ChannelMeaning, number>>) =>
  inventedSweep({ torqueAt: inventedTorque, more: () => more }).channels;

function conditions(a: Pull[], b: Pull[], options: CompareOptions = {}): Map<string, ConditionDifference> {
  const input = (key: string, pulls: Pull[]) => ({
    key,
    combinationId: key,
    pulls: pulls.map((pull) => ({ pull, view: viewPull(pull, recipe) })),
  });
  const found = compareCombinations([input('A', a), input('B', b)], options).conditions;
  return new Map(found.map((one) => [one.id, one]));
}

function combination(id: string, sections: Record<string, Record<string, unknown>>): Combination {
  return {
    id,
    engineId: 'six',
    name: id,
    sheet: testSheet(sections),
    revision: 1,
    madeFromId: null,
    packageIds: [],
    createdAt: '',
    invented: true,
  };
}

const beside = (more: Partial<ComparedBeside>): { beside: ComparedBeside } => ({
  beside: { combinations: new Map(), changes: {}, pulls: [], ...more },
});

describe('every row', () => {
  test('says its rule with a limit or a reason, and where it is from', () => {
    const found = conditions(
      [pullOf({}, logged({ boost: 60e3, fuelTemperature: 300, lambda: 0.8 }))],
      [pullOf({ tune: { fuelBatch: 'drum 4', jets: '82' }, operator: 'the other hand' })],
      beside({}),
    );
    for (const { id, why } of found.values())
      expect(why, id).toMatch(/common practice, no source|from memory|by the|from their|T = I/u);
  });
});

describe('parts', () => {
  const before = testSheet({ cam: { liftIntake: '11 mm' }, drive: { blowerPulleyDiameter: '84 mm' } });
  const after = testSheet({ cam: { liftIntake: '12 mm' }, drive: { blowerPulleyDiameter: '80 mm' } });
  const kit = { id: 'kit', name: 'Small pulley', covers: ['drive'], invented: true };
  const lines: PartChange[] = whatChanged(before, after, [kit]);

  test('a row a section, with both sides and the package it belongs to', () => {
    const found = conditions([pullOf()], [pullOf()], beside({ changes: { B: lines } }));
    expect(found.get('parts-cam')).toMatchObject({
      state: 'differs',
      values: { A: 'intake valve lift 11 mm', B: 'intake valve lift 12 mm' },
    });
    expect(found.get('parts-drive')!.why).toContain('"Small pulley"');
    expect(found.has('parts-heads')).toBe(false);
  });

  test('what is not on a sheet says so; without sheets there is no row', () => {
    const came = whatChanged(testSheet({}), testSheet({ cooler: { type: 'air to water' } }), []);
    const found = conditions([pullOf()], [pullOf()], beside({ changes: { B: came } }));
    expect(found.get('parts-cooler')!.values).toEqual({ A: 'not on the sheet', B: 'type air to water' });
    expect([...conditions([pullOf()], [pullOf()]).keys()].some((id) => id.startsWith('parts-'))).toBe(false);
  });
});

describe('fuel', () => {
  const fuels = (a: Record<string, unknown>, b: Record<string, unknown>) =>
    conditions(
      [pullOf({ combinationId: 'a' })],
      [pullOf({ combinationId: 'b' })],
      beside({
        combinations: new Map([
          ['a', combination('a', { fuel: a })],
          ['b', combination('b', { fuel: b })],
        ]),
      }),
    ).get('fuel')!;

  test('name, octane and density in one text', () => {
    const petrol = { name: 'pump petrol', researchOctane: '98', density: '745 kg/m3' };
    expect(fuels(petrol, { ...petrol, name: 'Pump Petrol' })).toMatchObject({
      state: 'alike',
      values: { A: 'pump petrol, research octane 98, 745 kg/m³' },
    });
    expect(fuels(petrol, { ...petrol, researchOctane: '95' }).state).toBe('differs');
    expect(fuels(petrol, { name: 'unknown' }).state).toBe('unknown');
  });

  test('another drum differs, a drum noted on one side is unknown, none noted is not asked for', () => {
    const batch = (a?: string, b?: string) =>
      conditions(
        [pullOf(a === undefined ? {} : { tune: { fuelBatch: a } })],
        [pullOf(b === undefined ? {} : { tune: { fuelBatch: b } })],
      ).get('fuel-batch')?.state;
    expect(batch('drum 4', 'Drum 4')).toBe('alike');
    expect(batch('drum 4', 'drum 5')).toBe('differs');
    expect(batch('drum 4')).toBe('unknown');
    expect(batch()).toBeUndefined();
  });
});

test('fuel more than 10 °F apart at the start differs; not measured it is not asked for', () => {
  const warm = (kelvin: number) => pullOf({}, logged({ fuelTemperature: kelvin }));
  expect(conditions([warm(300)], [warm(305)]).get('fuel-start')?.state).toBe('alike');
  expect(conditions([warm(300)], [warm(306)]).get('fuel-start')?.state).toBe('differs');
  expect(conditions([pullOf()], [pullOf()]).has('fuel-start')).toBe(false);
});

describe('air', () => {
  test('a carried factor that is not known is unknown, a known one is undone and alike', () => {
    const sheet = (factor: number | null) => pullOf({ carried: { standard: 'sae-j607', factor } });
    expect(conditions([pullOf()], [sheet(1.02)]).get('carried')?.state).toBe('alike');
    expect(conditions([pullOf()], [sheet(null)]).get('carried')).toMatchObject({
      state: 'unknown',
      values: { A: 'observed', B: 'SAE J607, factor not known' },
    });
  });

  test('a factor of a supercharged engine outside 0.97 to 1.03 is named, inside or unsupercharged it is not', () => {
    // 92 kPa dry at 25 °C: 1.18 · 99 / 92 - 0.18 = 1.0898.
    const at = (pressure: number, boost: number) => {
      const channels = logged({ boost });
      const pull = pullOf({}, channels);
      return { ...pull, weather: { ...pull.weather!, pressure: pressure as never } };
    };
    const row = (pressure: number, boost: number) =>
      conditions([at(pressure, boost)], [at(pressure, boost)]).get('factor-supercharged');
    expect(row(92e3, 60e3)).toMatchObject({
      state: 'unknown',
      values: { A: '1.0898, outside 0.97 to 1.03' },
    });
    expect(row(99e3, 60e3)).toBeUndefined();
    const bare = (pressure: number) => {
      const pull = pullOf();
      return { ...pull, weather: { ...pull.weather!, pressure: pressure as never } };
    };
    expect(conditions([bare(92e3)], [bare(92e3)]).has('factor-supercharged')).toBe(false);
  });
});

describe('order', () => {
  const placed = (order: number | null, minute: number, sessionId = 'day') =>
    pullOf(
      {
        sessionId,
        orderInSession: order,
        recordedAt: `2026-03-14T10:${`${minute}`.padStart(2, '0')}:00+01:00`,
      },
      logged({ boost: 60e3 }),
    );

  test('all of one side before all of the other differs, going back is alike, no place is unknown', () => {
    const state = (a: (number | null)[], b: (number | null)[]) =>
      conditions(
        a.map((order) => placed(order, 3 * (order ?? 0))),
        b.map((order) => placed(order, 3 * (order ?? 0))),
      ).get('place-in-session')?.state;
    expect(state([1, 2], [3, 4])).toBe('differs');
    expect(state([1, 4], [2, 3])).toBe('alike');
    expect(state([1, 3], [2])).toBe('alike');
    expect(state([1, null], [2])).toBe('unknown');
  });

  test('a short wait beside a long one differs; the pull before may be one that does not count', () => {
    const [first, aborted, hurried] = [placed(1, 0), placed(2, 20), placed(3, 21)];
    const found = conditions([first], [hurried], beside({ pulls: [first, aborted, hurried] })).get('wait');
    expect(found).toMatchObject({ state: 'differs', values: { A: 'first of the session', B: '1 min' } });
    expect(conditions([first], [hurried]).get('wait')?.state).toBe('unknown');
    const rested = placed(3, 25);
    expect(
      conditions([first], [rested], beside({ pulls: [first, aborted, rested] })).get('wait')?.state,
    ).toBe('alike');
  });

  test('another session is not the pull before, and without boost nobody asks', () => {
    const other = placed(1, 0, 'yesterday');
    const own = placed(2, 1);
    expect(conditions([other], [own], beside({ pulls: [other, own] })).get('wait')?.state).toBe('unknown');
    expect(conditions([pullOf()], [pullOf()]).has('wait')).toBe(false);
  });
});
