import { describe, expect, test } from 'vitest';
import type { Combination, SheetValue } from '../combination/index.ts';
import { OPEN_AUDIENCE, type Pull } from '../pull/index.ts';
import { inventedPoints, inventedPull, inventedTorque } from '../pull/invented-pull.testing.ts';
import { inventedHistory } from '../scatter/history.testing.ts';
import { answerTrial } from './answer-trial.ts';
import type { AnswerInput, Trial } from './model.ts';

const text = (value: string): SheetValue => ({
  text: value,
  value: null,
  kind: 'text',
  origin: 'data sheet',
});

function combination(
  id: string,
  parts: Record<string, Record<string, string>>,
  changes: Partial<Combination> = {},
): Combination {
  const sections = Object.fromEntries(
    Object.entries(parts).map(([section, fields]) => [
      section,
      Object.fromEntries(Object.entries(fields).map(([name, value]) => [name, text(value)])),
    ]),
  );
  return {
    id,
    engineId: 'six',
    name: id,
    sheet: { schemaVersion: 1, name: id, sections },
    revision: 1,
    madeFromId: null,
    packageIds: [],
    createdAt: '2026-03-14T10:00:00Z',
    invented: true,
    ...changes,
  };
}

const base = combination('base', { cam: { name: 'short' }, intake: { name: 'single plane' } });
const longCam = combination('long', { cam: { name: 'long' }, intake: { name: 'single plane' } });
const both = combination('both', { cam: { name: 'long' }, intake: { name: 'dual plane' } });

const pull = (id: string, combinationId: string, factor = 1, changes: Partial<Pull> = {}): Pull =>
  inventedPull(
    inventedPoints(
      Array.from({ length: 41 }, (_, row) => 2500 + 100 * row),
      (speed) => factor * inventedTorque(speed),
    ),
    { id, name: id, combinationId, ...changes },
  );

function trial(changes: Partial<Trial> = {}): Trial {
  return {
    id: 'trial',
    question: 'What does the longer cam add?',
    kind: 'comparison',
    combinations: [
      { key: 'A', combinationId: 'base', shortName: 'base cam' },
      { key: 'B', combinationId: 'long', shortName: 'longer cam' },
    ],
    pulls: [
      { pullId: 'a1', key: 'A', role: 'counted', reason: null },
      { pullId: 'a2', key: 'A', role: 'rejected', reason: 'throttle lifted' },
      { pullId: 'b1', key: 'B', role: 'counted', reason: null },
    ],
    correction: 'sae-j1349',
    averagesWindowRpm: null,
    remark: '',
    audience: OPEN_AUDIENCE,
    createdAt: '2026-03-14T10:00:00Z',
    invented: true,
    ...changes,
  };
}

const pulls = [pull('a1', 'base'), pull('a2', 'base', 0.7), pull('b1', 'long', 1.04)];
const answer = (changes: Partial<Trial> = {}, input: Partial<AnswerInput> = {}) =>
  answerTrial({ trial: trial(changes), combinations: [base, longCam, both], packages: [], pulls, ...input });
const codes = (given: ReturnType<typeof answerTrial>) => given.remarks.map((one) => one.code);

describe('a trial', () => {
  test('is answered from its counted pulls; a rejected one is viewed and never counts', () => {
    const given = answer();
    expect(given.state).toBe('answered');
    expect(given.comparison!.gains[0]!.meanPowerRatio).toBeCloseTo(0.04, 9);
    expect([...given.views.keys()]).toEqual(['a1', 'a2', 'b1']);
    expect(given.missing).toEqual([]);
    expect(given.changes.B!.map((line) => line.section)).toEqual(['cam']);
    expect(codes(given)).not.toContain('more-than-one-change');
  });

  test('without a pull of the baseline compares the others and claims no gain', () => {
    const given = answer(
      {
        combinations: [...trial().combinations, { key: 'C', combinationId: 'both', shortName: 'both' }],
        pulls: [
          { pullId: 'b1', key: 'B', role: 'counted', reason: null },
          { pullId: 'c1', key: 'C', role: 'counted', reason: null },
        ],
      },
      { pulls: [...pulls, pull('c1', 'both', 1.06)] },
    );
    expect(given.state).toBe('no baseline');
    expect(given.missing.map((one) => one.key)).toEqual(['A']);
    expect(given.comparison!.combinations.map((one) => one.key)).toEqual(['B', 'C']);
    expect(given.comparison!.gains).toEqual([]);
  });

  test('with pulls of the baseline only has one combination; with none, no pulls', () => {
    const [first] = trial().pulls;
    expect(answer({ pulls: [first!] }).state).toBe('one combination');
    const none = answer({ pulls: [] });
    expect(none).toMatchObject({ state: 'no pulls', comparison: null });
    expect(none.missing.map((one) => one.key)).toEqual(['A', 'B']);
  });

  test('whose pulls do not overlap has no common window', () => {
    const low = inventedPull(inventedPoints([1000, 1250, 1500, 1750], inventedTorque), {
      id: 'a1',
      combinationId: 'base',
    });
    expect(answer({}, { pulls: [low, pulls[2]!] }).state).toBe('no common window');
  });

  test('a survey sets figures side by side without gains and without changes', () => {
    const given = answer({ kind: 'survey' });
    expect(given).toMatchObject({ state: 'survey', changes: {} });
    expect(given.comparison!.gains).toEqual([]);
    expect(given.comparison!.combinations).toHaveLength(2);
  });
});

describe('what stands in the way', () => {
  const withBoth = {
    combinations: [
      trial().combinations[0]!,
      { key: 'B', combinationId: 'both', shortName: 'cam and intake' },
    ],
  };

  test('two things changed at once are named', () => {
    const given = answer(withBoth);
    const found = given.remarks.find((one) => one.code === 'more-than-one-change');
    expect(found?.message).toMatch(
      /^Two things changed at once in B \(cam and intake\): .*cam.* and .*intake/i,
    );
  });

  test('a package that came makes them one; a package on both sides does not', () => {
    const packages = [{ id: 'kit', name: 'cam kit', covers: ['cam', 'intake'], invented: true }];
    const fitted = { ...both, packageIds: ['kit'] };
    expect(codes(answer(withBoth, { packages, combinations: [base, fitted] }))).not.toContain(
      'more-than-one-change',
    );
    const onBoth = [{ ...base, packageIds: ['kit'] }, fitted];
    expect(codes(answer(withBoth, { packages, combinations: onBoth }))).toContain('more-than-one-change');
  });

  test('sheets that do not differ and other engines are said', () => {
    const same = {
      combinations: [trial().combinations[0]!, { key: 'B', combinationId: 'twin', shortName: 'twin' }],
    };
    const twin = { ...base, id: 'twin' };
    expect(codes(answer(same, { combinations: [base, twin] }))).toContain('nothing-changed-on-the-sheet');
    expect(codes(answer(same, { combinations: [base, { ...twin, engineId: 'eight' }] }))).toContain(
      'different-engines',
    );
  });

  test('a rejection without a reason, a pull that is not there, an aborted pull that counts', () => {
    const given = answer(
      {
        pulls: [
          { pullId: 'a1', key: 'A', role: 'counted', reason: null },
          { pullId: 'a2', key: 'A', role: 'rejected', reason: ' ' },
          { pullId: 'gone', key: 'B', role: 'counted', reason: null },
          { pullId: 'b1', key: 'B', role: 'counted', reason: null },
        ],
      },
      { pulls: [pulls[0]!, pulls[1]!, pull('b1', 'both', 1, { outcome: 'aborted' })] },
    );
    expect(codes(given)).toEqual(
      expect.arrayContaining([
        'rejected-without-reason',
        'pull-not-found',
        'aborted-pull-counted',
        'pull-of-another-combination',
      ]),
    );
  });
});

describe('the verdict of a trial', () => {
  const history = inventedHistory();
  const gainOf = (changes: Partial<Trial>, input: Partial<AnswerInput> = {}) =>
    answer(changes, { history, ...input }).comparison!.gains[0]!;
  const plan = {
    gainRatio: 0.03,
    odds: 0.8,
    pulls: [{ key: 'A' }, { key: 'B' }],
    looksAt: [2, 4],
    stopCriteria: null,
    notes: '',
  };

  test('is there with a history of scatter, and not without', () => {
    expect(gainOf({}).verdict!.pulls).toEqual({ baseline: 1, changed: 1 });
    expect(gainOf({}, { history: null }).verdict).toBeNull();
  });

  test('a cam brings its own set-up; what a person said of it goes before the parts', () => {
    const setUpPart = (takenApart: boolean | null) =>
      gainOf({
        combinations: trial().combinations.map((one) => (one.key === 'B' ? { ...one, takenApart } : one)),
      }).band!.scatter.gains[0]!.parts.setUp;
    expect(setUpPart(null)).toBeCloseTo(2 * history.setUp.sigma ** 2, 12);
    expect(setUpPart(true)).toBeCloseTo(2 * history.setUp.sigma ** 2, 12);
    expect(setUpPart(false)).toBe(0);
  });

  test('is held against the gain of the plan, else of the shop, and shares its error over the looks', () => {
    expect(gainOf({}, { worthwhile: 0.02 }).verdict!.worthwhileRatio).toBe(0.02);
    expect(gainOf({}).verdict!.worthwhileRatio).toBe(0.01);
    const planned = gainOf({ plan }, { worthwhile: 0.02 });
    expect(planned.verdict!.worthwhileRatio).toBe(0.03);
    expect(planned.band!.scatter.gains[0]!.look).toMatchObject({ number: 1, of: 2 });
  });
});
