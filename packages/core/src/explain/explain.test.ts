import { describe, expect, test } from 'vitest';
import type { PartChange, SectionId } from '../combination/index.ts';
import { said } from '../remark/index.ts';
import { explain } from './explain.ts';
import type { About, ExplainInput, Observation, State } from './observation.ts';
import { STORIES } from './stories.ts';
import type { SlopeWord } from './why-boost-moved.ts';

type Seen = Partial<Record<About, State>>;

const observations = (seen: Seen): Observation[] =>
  Object.entries(seen).map(([about, state]) => ({
    about: about as About,
    state,
    change: null,
    text: said`${about} ${state}.`,
  }));
const line = (section: SectionId): PartChange => ({
  section,
  field: 'type',
  label: section,
  before: 'one',
  after: 'other',
  packageName: null,
});
const explained = (seen: Seen, parts: SectionId[], more: Partial<ExplainInput> = {}) =>
  explain({
    changedKey: 'B',
    verdict: 'clear',
    observations: observations(seen),
    changes: parts.map(line),
    charger: 'mechanical',
    pressureRatio: null,
    boostRatio: null,
    ...more,
  });
const open = (given: ReturnType<typeof explain>) => given.notExcluded.map(({ id }) => id);

const TUNED: Seen = { lambda: 'same', sparkAdvance: 'same' };
const DRIVEN: Seen = { pulleyRatio: 'same' };

/** What the trade tells of power and boost (common practice, no source): which observations make which story. */
const TRADE: [row: string, Seen, SectionId[], likeliest: string, Partial<ExplainInput>?][] = [
  [
    'power up, boost down, impeller speed same, fuel up: breathes better',
    { power: 'up', boost: 'down', impellerSpeed: 'same', slip: 'same', fuelFlow: 'up', ...DRIVEN, ...TUNED },
    ['cam'],
    'breathes-better',
  ],
  [
    'power up, boost same, fuel up: breathes better, hidden by more flow',
    { power: 'up', boost: 'same', fuelFlow: 'up', ...DRIVEN, ...TUNED },
    ['heads'],
    'breathes-better',
  ],
  [
    'power up, boost same, spark earlier: the spark',
    { power: 'up', boost: 'same', fuelFlow: 'same', lambda: 'same', sparkAdvance: 'up' },
    ['ignition'],
    'spark-earlier',
  ],
  [
    'power up, boost up, smaller pulley: the pulleys',
    { power: 'up', boost: 'up', pulleyRatio: 'up', fuelFlow: 'up', chargeTemperature: 'up' },
    ['drive'],
    'faster-pulleys',
  ],
  [
    'power up, boost up, less slip by the shaft speed: less slip',
    { power: 'up', boost: 'up', pulleyRatio: 'same', slip: 'down', impellerSpeed: 'up', fuelFlow: 'up' },
    ['drive'],
    'less-slip',
  ],
  [
    'power up, boost down, charge much cooler: a cooler was added',
    { power: 'up', boost: 'down', chargeTemperature: 'down', fuelFlow: 'up' },
    ['cooler'],
    'cooler',
  ],
  [
    'power same, boost down, fuel same, charge cooler: only pressure fell',
    { power: 'same', boost: 'down', fuelFlow: 'same', chargeTemperature: 'down' },
    ['cooler'],
    'pressure-fell',
    { verdict: 'no-difference' },
  ],
  [
    'power down, boost down at the top only, worse each pull, slip by the shaft speed: belt slip',
    { power: 'down', boost: 'down', boostAtTop: 'down', trend: 'down', slip: 'up', fuelFlow: 'down' },
    [],
    'belt-slip',
  ],
  [
    'power down, boost up, same blower: something restricts',
    { power: 'down', boost: 'up', fuelFlow: 'down', ...DRIVEN, ...TUNED },
    ['exhaust'],
    'restriction',
  ],
  [
    'power down, boost same, charge warmer: heat soak',
    { power: 'down', boost: 'same', chargeTemperature: 'up', lambda: 'same' },
    [],
    'heat-soak',
  ],
  [
    'power down, boost same, richer: over-fuelled',
    { power: 'down', boost: 'same', lambda: 'down', sparkAdvance: 'same', fuelFlow: 'up' },
    [],
    'mixture',
  ],
  [
    'power down, boost same, less spark: spark',
    { power: 'down', boost: 'same', sparkAdvance: 'down', lambda: 'same', fuelFlow: 'same' },
    [],
    'spark-later',
  ],
  [
    'power down over repeats, boost slightly down, charge warmer each pull: heat soak',
    { power: 'down', boost: 'down', chargeTemperature: 'same', chargeTrend: 'up', trend: 'down', ...TUNED },
    [],
    'soaking-on',
  ],
  [
    'power up above a speed only: tuning moved up',
    { power: 'up', crossover: 'up', ...TUNED },
    ['intake'],
    'tuning-moved-up',
    { charger: 'none' },
  ],
  [
    'the same per cent everywhere, weather differs: weather or standard first',
    { power: 'up', shape: 'same', correction: 'up' },
    ['shortBlock'],
    'weather-or-standard',
  ],
  [
    'the same per cent everywhere, weather alike: compression or fuel',
    { power: 'up', shape: 'same', correction: 'same', boost: 'same', ...TUNED },
    ['shortBlock'],
    'compression-or-fuel',
  ],
  [
    'no change where a part changed: not the restriction',
    { power: 'same', boost: 'same', fuelFlow: 'same', ...TUNED },
    ['intake'],
    'not-the-restriction',
    { verdict: 'no-difference' },
  ],
  [
    'gains more boosted than without, beyond the pressure ratio: it mattered more at flow',
    { power: 'up', withoutSupercharger: 'up', ...TUNED },
    ['exhaust'],
    'restriction-at-flow',
  ],
  [
    'a turbocharger holds its boost: the same pressure, more air',
    { power: 'up', boost: 'same', fuelFlow: 'up', ...TUNED },
    ['cam'],
    'boost-regulated',
    { charger: 'turbocharger' },
  ],
  [
    'a supercharger came, more boost, more fuel, warmer: it presses more air in',
    { power: 'up', boost: 'up', fuelFlow: 'up', chargeTemperature: 'up', lambda: 'down' },
    ['supercharger', 'drive'],
    'supercharger-fitted',
    { charger: 'fitted' },
  ],
  [
    'a supercharger went: less air',
    { power: 'down', boost: 'down', fuelFlow: 'down' },
    ['supercharger', 'drive'],
    'supercharger-taken-off',
    { charger: 'taken-off' },
  ],
];

describe('as the trade tells it', () => {
  test.each(TRADE)('%s', (_, seen, parts, likeliest, more) => {
    const given = explained(seen, parts, more);
    expect(given.likeliest?.id).toBe(likeliest);
    expect(given.silent).toBeNull();
    expect(given.likeliest!.disagree).toBe(0);
    expect(given.likeliest!.evidence.every(({ speaks }) => speaks === 'for')).toBe(true);
  });

  test('every story is the likeliest of some row', () => {
    const told = new Set(TRADE.map(([, , , likeliest]) => likeliest));
    const mirrored = ['slower-pulleys', 'tuning-moved-down', 'cooler-charge'];
    expect(STORIES.map(({ id }) => id).filter((id) => !told.has(id))).toEqual(
      expect.arrayContaining(mirrored),
    );
    expect(STORIES).toHaveLength(told.size + mirrored.length);
  });

  test('the mirror of three rows', () => {
    const slower: Seen = { power: 'down', boost: 'down', pulleyRatio: 'down', fuelFlow: 'down' };
    expect(explained(slower, ['drive']).likeliest?.id).toBe('slower-pulleys');
    const low: Seen = { power: 'down', crossover: 'down', ...TUNED };
    expect(explained(low, ['intake'], { charger: 'none' }).likeliest?.id).toBe('tuning-moved-down');
    const iced: Seen = { power: 'up', boost: 'down', chargeTemperature: 'down', fuelFlow: 'up' };
    expect(explained(iced, []).likeliest?.id).toBe('cooler-charge');
  });
});

describe('a cam at the same pulley, shaft speed unknown', () => {
  const seen: Seen = {
    power: 'up',
    boost: 'down',
    fuelFlow: 'up',
    chargeTemperature: 'same',
    ...DRIVEN,
    ...TUNED,
  };
  const given = explained(seen, ['cam'], { pressureRatio: 1.7, boostRatio: -0.1 });

  test('it breathes better, belt slip is not excluded, a shaft-speed pick-up would settle it', () => {
    expect(given.likeliest?.id).toBe('breathes-better');
    expect(given.likeliest?.text.text).toContain("where the supercharger's speed line falls");
    expect(open(given)).toEqual(['belt-slip']);
    expect(given.wouldSettle?.text).toMatch(/^A shaft-speed pick-up .*would settle it/);
  });

  test('says how much slip would take as much boost: 10 % at 2.4 % each', () => {
    expect(given.notExcluded[0]!.text.text).toContain('About 4.2 % of slip');
  });

  test('with the shaft speed the same, slip is out', () => {
    const measured = explained({ ...seen, slip: 'same', impellerSpeed: 'same' }, ['cam']);
    expect(open(measured)).toEqual([]);
    expect(measured.wouldSettle).toBeNull();
  });

  test('with slip seen, it is beside better breathing with what speaks against it', () => {
    const measured = explained({ ...seen, slip: 'up', impellerSpeed: 'down' }, ['cam']);
    expect(measured.likeliest?.id).toBe('breathes-better');
    const slip = measured.notExcluded.find(({ id }) => id === 'belt-slip')!;
    expect(slip.evidence.filter(({ speaks }) => speaks === 'against').map(({ about }) => about)).toEqual([
      'power',
      'fuelFlow',
    ]);
  });

  test('which way boost goes contradicts no better breathing: left of the peak of a speed line it rises', () => {
    expect(explained({ ...seen, boost: 'up' }, ['cam']).likeliest?.id).toBe('breathes-better');
  });
});

describe('with a match at hand the run of the speed line decides which way boost goes', () => {
  const seen: Seen = { power: 'up', fuelFlow: 'up', ...DRIVEN, ...TUNED };
  const runs = (lineRuns: SlopeWord, boost: 'up' | 'same' | 'down', parts: SectionId[] = ['cam']) =>
    explained({ ...seen, boost }, parts, { lineRuns });

  test.each([
    ['falls', 'down', 'boost falls with it'],
    ['flat', 'same', 'boost stays'],
    ['rises', 'up', 'boost rises with it'],
  ] as const)('it %s and boost goes %s: breathes better', (line, boost, words) => {
    const given = runs(line, boost);
    expect(given.likeliest?.id).toBe('breathes-better');
    expect(given.likeliest?.text.text).toContain(words);
    expect(given.likeliest?.text.text).not.toContain('not known');
    expect(given.likeliest?.evidence.map(({ about }) => about)).toContain('boost');
  });

  test('boost that goes against the line is no better breathing', () => {
    expect(runs('falls', 'up').likeliest?.id).not.toBe('breathes-better');
    expect(runs('rises', 'down').likeliest?.id).not.toBe('breathes-better');
    expect(runs('falls', 'same').likeliest?.id).toBe('breathes-better');
  });

  test('the same for a cooler', () => {
    const cooled: Seen = { ...seen, boost: 'down', chargeTemperature: 'down' };
    const given = explained(cooled, ['cooler'], { lineRuns: 'falls' });
    expect(given.likeliest?.id).toBe('cooler');
    expect(given.likeliest?.text.text).toContain('boost falls with it');
  });
});

describe('belt slip', () => {
  test('is never the likeliest without shaft speed, however boost sags', () => {
    const sagging: Seen = {
      power: 'down',
      boost: 'down',
      boostAtTop: 'down',
      trend: 'down',
      fuelFlow: 'down',
    };
    const given = explained(sagging, []);
    expect(given.likeliest?.id).not.toBe('belt-slip');
    expect(open(given)).toContain('belt-slip');
    expect(given.wouldSettle?.text).toContain('shaft-speed');
  });
});

describe('silence', () => {
  test('within the noise there is nothing to explain, and without a verdict nobody knows', () => {
    const seen: Seen = { power: 'same', boost: 'down', fuelFlow: 'up', ...TUNED };
    const noise = explained(seen, ['cam'], { verdict: 'within-noise' });
    expect(noise).toMatchObject({ likeliest: null, notExcluded: [], wouldSettle: null });
    expect(noise.silent?.text).toContain('nothing to explain yet');
    expect(explained(seen, ['cam'], { verdict: null }).silent?.text).toContain('how sure');
  });

  test('one observation beside power is too little, and it is said what to measure', () => {
    const given = explained({ power: 'up', boost: 'down' }, ['cam'], { changes: [line('cam')] });
    expect(given.likeliest).toBeNull();
    expect(given.silent?.text).toMatch(/^Too little was measured to say why: 2 observations/);
    expect(given.silent?.text).toContain('fuel flow on both sides');
  });

  test('power alone tells nothing', () => {
    const given = explained({ power: 'up' }, ['cam'], { charger: 'none' });
    expect(given.likeliest).toBeNull();
    expect(open(given)).toEqual(['mixture', 'spark-earlier']);
    expect(given.silent?.text).not.toContain('boost');
  });
});

describe('what contradicts', () => {
  test('less fuel is no better breathing', () => {
    const given = explained({ power: 'up', boost: 'down', fuelFlow: 'down', ...TUNED }, ['cam']);
    expect(given.likeliest?.id).not.toBe('breathes-better');
    expect(open(given)).not.toContain('breathes-better');
  });

  test('a part that did not change makes no story of parts', () => {
    const given = explained({ power: 'up', boost: 'down', fuelFlow: 'up', ...TUNED }, ['drive']);
    expect(given.likeliest?.id).not.toBe('breathes-better');
  });

  test('a mixture that moved stands beside better breathing', () => {
    const given = explained(
      { power: 'up', boost: 'down', fuelFlow: 'up', lambda: 'down', sparkAdvance: 'same' },
      ['cam'],
    );
    expect(open(given)).toContain('mixture');
  });
});

test('no story is told twice under one name, and each has something that decides it among what it foretells', () => {
  const ids = STORIES.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { id, foretells, decidedBy } of STORIES)
    for (const about of decidedBy) expect(foretells[about], `${id}: ${about}`).toBeDefined();
});
