import { describe, expect, test } from 'vitest';
import type { PartChange, SectionId } from '../combination/index.ts';
import { compareCombinations } from '../compare/index.ts';
import { defaultRecipe, type Pull, viewPull } from '../pull/index.ts';
import { inventedPull, inventedSweep, inventedTorque } from '../pull/invented-pull.testing.ts';
import { badgesOf } from './badges.ts';
import type { Badge } from './model.ts';

const recipe = defaultRecipe('sae-j1349');

const sheetLine = (section: SectionId, packageName: string | null = null): PartChange => ({
  section,
  field: 'type',
  label: `${section}, type`,
  before: 'one',
  after: 'other',
  packageName,
});

const FULL = {
  oilTemperature: 355,
  coolantTemperature: 351,
  inletAirTemperature: 298,
  lambda: 0.87,
  sparkAdvance: 0.5,
};

let made = 0;
function pullOf(changes: Partial<Pull> = {}, torque = 1, more: Record<string, number> = FULL): Pull {
  made += 1;
  const { channels } = inventedSweep({ torqueAt: (rpm) => torque * inventedTorque(rpm), more: () => more });
  return inventedPull(channels, {
    id: `pull ${made}`,
    name: `Pull ${made}`,
    recordedAt: '2026-03-14T10:00:00+01:00',
    cell: 'cell 1',
    operator: 'one',
    sweep: { momentOfInertia: 0.3, inertiaCompensated: 'no' },
    ...changes,
  });
}

function badges(
  a: Pull[],
  b: Pull[],
  lines: PartChange[] | null = [sheetLine('cam')],
): Record<Badge['id'], Badge> {
  const input = (key: string, pulls: Pull[]) => ({
    key,
    combinationId: key,
    pulls: pulls.map((pull) => ({ pull, view: viewPull(pull, recipe) })),
  });
  const inputs = [input('A', a), input('B', b)];
  const changes = lines === null ? {} : { B: lines };
  const comparison = compareCombinations(inputs, {
    beside: { combinations: new Map(), changes, pulls: [...a, ...b] },
  });
  const counted = inputs.flatMap(({ key, pulls }) => pulls.map((one) => ({ key, ...one })));
  const found = badgesOf({ comparison, changes, counted });
  return Object.fromEntries(found.map((one) => [one.id, one])) as Record<Badge['id'], Badge>;
}

const earned = (found: Record<string, Badge>) =>
  Object.values(found)
    .filter((one) => one.earned)
    .map(({ id }) => id);

test('a careful trial earns all but what nobody noted', () => {
  const found = badges([pullOf(), pullOf({}, 1.004)], [pullOf({}, 1.05), pullOf({}, 1.052)]);
  // The fuel is on no sheet: likeness is not shown.
  expect(earned(found)).toEqual(['repeats', 'same-day', 'same-standard', 'conditions-shown', 'one-change']);
  expect(found['like-for-like'].why).toBe('Not known: Fuel.');
  expect(found.repeats.why).toContain('A 0.4 %, B 0.2 % between highest and lowest');
  expect(found['one-change'].why).toBe('B: only cam differs from the baseline.');
});

test('no gain, no badge', () => {
  expect(badgesOf({ comparison: null, changes: {}, counted: [] })).toEqual([]);
});

describe('is not earned', () => {
  test('by one pull, and by pulls more than 2 % apart', () => {
    expect(badges([pullOf(), pullOf()], [pullOf()]).repeats).toMatchObject({
      earned: false,
      why: expect.stringContaining('Only one counted pull of B'),
    });
    expect(badges([pullOf(), pullOf({}, 1.03)], [pullOf(), pullOf()]).repeats).toMatchObject({
      earned: false,
      why: expect.stringContaining('The pulls of A do not agree'),
    });
  });

  test('on two days, or with a day that is not noted', () => {
    const late = pullOf({ recordedAt: '2026-03-16T10:00:00+01:00' });
    expect(badges([pullOf()], [late])['same-day'].why).toBe(
      'The counted pulls are of 2 days: 2026-03-14 and 2026-03-16.',
    );
    const unknown = pullOf({ recordedAt: null, name: 'Pull of some day' });
    expect(badges([pullOf()], [unknown])['same-day'].why).toContain('Pull of some day');
  });

  test('in two standards', () => {
    const printed = pullOf({ carried: { standard: 'sae-j607', factor: null } });
    expect(badges([pullOf()], [printed])['same-standard'].earned).toBe(false);
  });

  test('without weather or starting temperatures of every pull', () => {
    const bare = pullOf({ weather: null, name: 'Bare' }, 1, { lambda: 0.87 });
    expect(badges([pullOf()], [bare])['conditions-shown'].why).toBe(
      'Not known: the weather of Bare; oil at the start of Bare; coolant at the start of Bare.',
    );
  });

  test('with two sections, none, or a section and the spark', () => {
    const change = (lines: PartChange[] | null, b = pullOf()) => badges([pullOf()], [b], lines)['one-change'];
    expect(change([sheetLine('cam'), sheetLine('intake')])).toMatchObject({
      earned: false,
      why: '2 things differ in B: cam and intake.',
    });
    expect(change([]).why).toContain('enter what was changed');
    expect(change(null).why).toContain('is not known');
    const advanced = pullOf({}, 1, { ...FULL, sparkAdvance: 0.55 });
    expect(change([sheetLine('cam')], advanced).why).toBe('2 things differ in B: cam and spark.');
    expect(change([], advanced).earned).toBe(true);
  });

  test('with oil at another temperature', () => {
    const hot = pullOf({}, 1, { ...FULL, oilTemperature: 365 });
    expect(badges([pullOf()], [hot])['like-for-like'].why).toContain('Differs: Oil at the start.');
  });
});

test('one package is one change though it covers several sections', () => {
  const kit = [sheetLine('supercharger', 'Kit'), sheetLine('cooler', 'Kit')];
  expect(badges([pullOf()], [pullOf()], kit)['one-change'].earned).toBe(true);
});
