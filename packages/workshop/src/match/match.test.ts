import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { matchBands, solveMatch } from '@pullbook/core/airpath';
import type { Trial } from '@pullbook/core/trial';
import { type Book, openBook } from '@pullbook/store';
import type { MatchBundle } from '@pullbook/views/match';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { amendPull } from '../amend-pull.ts';
import { checkThing } from '../check.ts';
import { addCombinationFromText } from '../combinations.ts';
import { makeDemoBook } from '../demo-book.ts';
import { editTrial } from '../edit-trial.ts';
import { undo } from '../history.ts';
import { keptPredictions } from '../predictions.ts';
import { sheetSameBut } from '../same-but.ts';
import { startTrial } from '../start-trial.ts';
import { bandsOfMatch } from './bands-of-match.ts';
import { keepMatchPrediction } from './keep-prediction.ts';
import { matchOfCombination, matchOfTrial } from './match-bundle.ts';
import { matchReportOf } from './match-report-of.ts';

let folder = '';
let book: Book;
const LONGER_CAM = 'What does the longer cam add at the same pulley?';
const SMALLER_PULLEY = 'What does the smaller pulley add?';
const WITHOUT = 'What would the longer cam make without the supercharger?';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-match-'));
  await makeDemoBook(join(folder, 'demo'));
  book = await openBook(join(folder, 'demo'), { create: null });
}, 60_000);
afterAll(async () => {
  await book.close();
  await rm(folder, { recursive: true, force: true });
});

async function done<T>(
  result: Promise<{ ok: true; value: T } | { ok: false; remarks: { message: string }[] }>,
): Promise<T> {
  const given = await result;
  if (!given.ok) throw new Error(given.remarks[0]?.message);
  return given.value;
}

const trialOf = async (question: string): Promise<Trial> =>
  (await book.trials()).find((one) => one.question === question)!;

const codesOf = (bundle: MatchBundle, key: string) =>
  bundle.combinations.find((one) => one.key === key)!.assumptions.map(({ code }) => code);

describe('what a match rests on', () => {
  test('like for like: naturally aspirated pulls of the same engine, a map of the book, own boosted pulls', async () => {
    const bundle = await done(matchOfTrial(book, SMALLER_PULLEY));
    expect(bundle.combinations.map(({ key }) => key)).toEqual(['A', 'B']);
    const trial = await trialOf(SMALLER_PULLEY);
    for (const { key, input, fit, measured } of bundle.combinations) {
      const counted = trial.pulls.filter((one) => one.key === key && one.role === 'counted');
      expect(input.baseline.origin).toBe('measured');
      expect(input.baseline.pullIds).toHaveLength(3);
      expect(input.compressor.map.form).toBe('points');
      expect(fit?.pullIds.toSorted()).toEqual(counted.map(({ pullId }) => pullId).toSorted());
      expect(measured?.pullIds.toSorted()).toEqual(fit?.pullIds.toSorted());
    }
  });

  test('a cam that was never pulled without supercharger is scaled by the pair under boost, and says so', async () => {
    const bundle = await done(matchOfTrial(book, LONGER_CAM));
    const [base, longer] = bundle.combinations;
    expect(base!.input.baseline.origin).toBe('measured');
    expect(longer!.input.baseline.origin).toBe('scaled');
    expect(codesOf(bundle, 'B')).toContain('baseline-scaled');
    expect(codesOf(bundle, 'A')).not.toContain('baseline-scaled');
  });

  test('on another fuel than its pulls: what that does is in the match, by rule of thumb, and nothing of the others moves', async () => {
    const base = (await done(matchOfTrial(book, SMALLER_PULLEY))).combinations[0]!;
    expect(codesOf(await done(matchOfTrial(book, SMALLER_PULLEY)), 'A')).not.toContain('another-fuel');
    expect(base.input.work.fuelFactor ?? null).toBeNull();
    const lines = [
      { place: 'fuel.name', entered: 'E85' },
      { place: 'fuel.researchOctane', entered: 'unknown' },
    ];
    const { sheetText } = await done(
      sheetSameBut(book, { fromId: base.combinationId, name: 'On E85', lines }),
    );
    const { id } = await done(addCombinationFromText(book, { sheetText, madeFromId: base.combinationId }));
    const [match] = (await done(matchOfCombination(book, id))).combinations;
    expect(match!.assumptions.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['another-fuel', 'fuel-energy']),
    );
    expect(match!.spread.some(({ staysBesideFit }) => staysBesideFit)).toBe(true);
    expect(Math.min(...match!.input.work.fuelFactor!)).toBeGreaterThan(1);
    await done(undo(book, null, { units: 'si', decimalMark: '.' }));
  });

  test('a combination without supercharger is left with its reason', async () => {
    const bundle = await done(matchOfTrial(book, 'What does the supercharger add on the base cam?'));
    expect(bundle.left).toMatchObject([{ reason: { code: 'not-supercharged', level: 'note' } }]);
    expect(bundle.silent).toEqual([]);
  });

  test('what was never pulled without supercharger is scaled, with its band, and never called measured', async () => {
    const [alone] = (await done(matchOfTrial(book, WITHOUT))).left;
    expect(alone!.reason.code).toBe('scaled-alone');
    expect(alone!.reason.message).toMatch(/never pulled\. Scaled, not measured: /);
    const { baseline, power } = alone!.scaled!;
    expect(baseline.origin).toBe('scaled');
    for (const [node, middle] of baseline.brakePower.entries()) {
      expect(power.low[node]!).toBeLessThan(middle);
      expect(power.high[node]!).toBeGreaterThan(middle);
    }
    const report = await done(matchReportOf(book, { trial: WITHOUT }, { bands: null, words: null }));
    expect(report.left[0]!.scaledBaseline!.map((one) => one.brakePowerKw)).toEqual(
      baseline.brakePower.map((one) => one / 1000),
    );
  });

  test('a trial with nothing to match is silent and says why', async () => {
    const trial = await done(
      startTrial(book, {
        question: 'Two engines alone?',
        kind: 'comparison',
        combinations: [
          { combinationId: 'Naturally aspirated, base cam', shortName: 'base' },
          { combinationId: 'Before the rebuild', shortName: 'before' },
        ],
      }),
    );
    const bundle = await done(matchOfTrial(book, trial.id));
    expect(bundle.combinations).toEqual([]);
    expect(bundle.silent.map(({ code }) => code)).toEqual(['none-supercharged']);
    const one = await done(matchOfCombination(book, 'Naturally aspirated, base cam'));
    expect(one.silent.map(({ code }) => code)).toEqual(['not-supercharged']);
  });

  test('fitted on one pulley alone, the other takes its factors and says from where', async () => {
    const trial = await trialOf(SMALLER_PULLEY);
    const [a] = trial.combinations;
    const own = await done(matchOfTrial(book, trial.id));
    const taken = await done(matchOfTrial(book, trial.id, { fitOn: [a!.combinationId] }));
    expect(taken.combinations.map(({ fit }) => fit !== null)).toEqual([true, false]);
    expect(codesOf(taken, 'B')).toContain('fit-taken');
    expect(codesOf(own, 'B')).not.toContain('fit-taken');
    const [of, by] = taken.combinations.map(({ input }) => input);
    expect(by!.compressor.headScale / of!.compressor.headScale).toBeCloseTo(1, 2);
    // What work was lost under boost is lost more with more of it.
    expect(by!.work.factor).toBeLessThan(of!.work.factor);
    expect(taken.combinations[0]!.fit!.restsOn).toEqual(taken.combinations[0]!.fit!.pullIds);
    expect(own.combinations[0]!.fit!.restsOn).toEqual(own.combinations[1]!.fit!.restsOn);
    expect(own.combinations[0]!.fit!.restsOn.length).toBeGreaterThan(
      taken.combinations[0]!.fit!.restsOn.length,
    );
  });

  test('a rejected pull does not count; taken back, it does again', async () => {
    const trial = await trialOf(SMALLER_PULLEY);
    const one = trial.pulls.find(({ key, role }) => key === 'B' && role === 'counted')!;
    await done(
      editTrial(
        book,
        trial.id,
        { pulls: [{ ...one, role: 'rejected', reason: 'belt squealed' }] },
        'to see what it does',
      ),
    );
    const without = await done(matchOfTrial(book, trial.id));
    expect(without.combinations[1]!.fit!.pullIds).not.toContain(one.pullId);
    expect(without.combinations[1]!.fit!.pullIds).toHaveLength(2);
    await undo(book, null, { units: 'si', decimalMark: '.' });
    const again = await done(matchOfTrial(book, trial.id));
    expect(again.combinations[1]!.fit!.pullIds).toContain(one.pullId);
  });

  test('a pull without weather is left out of the fit and said; with no other, the fit of the next pulley is taken', async () => {
    const { pulls } = await trialOf(SMALLER_PULLEY);
    const [first, ...others] = pulls.filter(({ key, role }) => key === 'B' && role === 'counted');
    await done(amendPull(book, first!.pullId, { weather: null }, 'the station was off'));
    const one = await done(matchOfTrial(book, SMALLER_PULLEY));
    expect(one.combinations[1]!.fit!.pullIds.toSorted()).toEqual(
      others.map(({ pullId }) => pullId).toSorted(),
    );
    expect(codesOf(one, 'B')).toContain('no-weather');
    for (const { pullId } of others)
      await done(amendPull(book, pullId, { weather: null }, 'the station was off'));
    const none = await done(matchOfTrial(book, SMALLER_PULLEY));
    expect(none.combinations[1]!.fit).toBeNull();
    expect(codesOf(none, 'B')).toEqual(expect.arrayContaining(['no-weather', 'fit-taken']));
    for (const _ of pulls.filter(({ key, role }) => key === 'B' && role === 'counted'))
      await undo(book, null, { units: 'si', decimalMark: '.' });
    expect((await done(matchOfTrial(book, SMALLER_PULLEY))).combinations[1]!.fit!.pullIds).toHaveLength(3);
  });

  test('other weather is taken for every combination; the same question is worked out once', async () => {
    const usual = await done(matchOfTrial(book, SMALLER_PULLEY));
    expect(await done(matchOfTrial(book, SMALLER_PULLEY))).toBe(usual);
    const thin = {
      ...usual.combinations[0]!.input.air,
      pressure: 83_000,
    } as MatchBundle['combinations'][0]['input']['air'];
    const high = await done(matchOfTrial(book, SMALLER_PULLEY, { air: thin }));
    for (const [place, { input }] of high.combinations.entries()) {
      expect(input.air.pressure).toBe(83_000);
      const [there, here] = [input, usual.combinations[place]!.input].map(
        (one) => solveMatch(one).figures.brakePower.at(-1)!,
      );
      expect(there).toBeLessThan(0.95 * here!);
    }
  });
});

describe('bands', () => {
  test('made in two slices they are those of one run, and a band holds its curve', async () => {
    const { combinations } = await done(matchOfTrial(book, SMALLER_PULLEY));
    const made = await bandsOfMatch(combinations, { draws: 201, seed: 7 });
    expect(made).toEqual(matchBands(combinations, { draws: 201, seed: 7 }));
    const { brakePower } = solveMatch(combinations[0]!.input).figures;
    const band = made.cases[0]!.brakePower;
    brakePower.forEach((power, node) => {
      expect(band.low[node]).toBeLessThan(power);
      expect(band.high[node]).toBeGreaterThan(power);
    });
  });

  test('two cams with one supercharger: the difference holds what was measured, and its band is narrower than either’s', async () => {
    const { combinations } = await done(matchOfTrial(book, LONGER_CAM));
    const bands = matchBands(combinations, { draws: 400, seed: 3 });
    const [base, longer] = combinations.map(({ input, measured }) => ({
      figures: solveMatch(input).figures,
      placeOf: (speed: number) => input.baseline.engineSpeedRpm.indexOf(speed),
      measured: (figure: 'boost' | 'power', speed: number) =>
        measured![figure]![measured!.engineSpeedRpm.indexOf(speed)]!,
    }));
    const speeds = [4000, 4500, 5000, 5500, 6000, 6500];
    for (const [figure, name] of [
      ['boost', 'boost'],
      ['brakePower', 'power'],
    ] as const) {
      const widthOf = ({ low, high }: { low: number[]; high: number[] }, place: number) =>
        high[place]! - low[place]!;
      let inside = 0;
      for (const speed of speeds) {
        const difference = bands.differences[1]![figure];
        const place = longer!.placeOf(speed);
        const gained = longer!.measured(name, speed) - base!.measured(name, speed);
        if (gained >= difference.low[place]! && gained <= difference.high[place]!) inside += 1;
        expect(widthOf(difference, place)).toBeLessThan(widthOf(bands.cases[1]![figure], place));
      }
      expect(inside, figure).toBeGreaterThanOrEqual(5);
    }
  });

  test('given up, nothing is computed', async () => {
    const { combinations } = await done(matchOfTrial(book, SMALLER_PULLEY));
    const signal = AbortSignal.abort(new Error('not wanted'));
    await expect(bandsOfMatch(combinations, { draws: 40, signal })).rejects.toThrow('not wanted');
  });
});

describe('the report', () => {
  test('has every figure with its band, the difference to the first, and what was tried against its own', async () => {
    const report = await done(
      matchReportOf(
        book,
        { trial: SMALLER_PULLEY },
        { whatIf: { on: 'A', blowerPulleyDiameter: '80 mm' }, bands: { draws: 60 }, words: null },
      ),
    );
    expect(report.matches.map(({ key, differences }) => [key, differences?.from ?? null])).toEqual([
      ['A', null],
      ['B', 'A'],
      [expect.stringContaining('A'), 'A'],
    ]);
    const [first, , tried] = report.matches;
    const at = (points: NonNullable<typeof first>['points']) => points.at(-1)!;
    expect(at(tried!.points).boostKpa).toBeGreaterThan(at(first!.points).boostKpa as number);
    for (const point of first!.points) {
      expect(point.boostKpaLow).toBeLessThanOrEqual(point.boostKpa as number);
      expect(point.boostKpaHigh).toBeGreaterThanOrEqual(point.boostKpa as number);
    }
    expect(tried!.drive.pulleyRatio).toBeCloseTo(165 / 80, 9);
    expect(JSON.stringify(report)).not.toMatch(/NaN|Infinity/);
  });

  test('names what can be tried where something else is', async () => {
    const report = await matchReportOf(
      book,
      { trial: SMALLER_PULLEY },
      { whatIf: { pully: '80 mm' } as object, bands: null, words: null },
    );
    expect(report).toMatchObject({ ok: false, remarks: [{ code: 'what-if-not-known' }] });
  });
});

describe('a prediction kept before the pull', () => {
  test('is refused once there is a counted pull', async () => {
    expect(await keepMatchPrediction(book, SMALLER_PULLEY, 'B')).toMatchObject({
      ok: false,
      remarks: [{ code: 'already-pulled' }],
    });
  });

  test('holds power in the standard of the trial, boost, and the whole curve with seed and version', async () => {
    const from = await done(
      sheetSameBut(book, {
        fromId: 'Supercharged, base cam',
        name: 'Supercharged, base cam, 78 mm',
        lines: [{ place: 'drive.blowerPulleyDiameter', entered: '78 mm (measured)' }],
      }),
    );
    const added = await done(
      addCombinationFromText(book, { sheetText: from.sheetText, madeFromId: from.from.id }),
    );
    const trial = await done(
      startTrial(book, {
        question: 'And 78 mm?',
        kind: 'comparison',
        combinations: [
          { combinationId: 'Supercharged, base cam', shortName: '84 mm' },
          { combinationId: added.id, shortName: '78 mm' },
        ],
      }),
    );
    const bundle = await done(matchOfTrial(book, trial.id));
    expect(codesOf(bundle, 'B')).toContain('fit-taken');
    const kept = await done(keepMatchPrediction(book, trial.id, 'b', { draws: 80, seed: 5 }));
    expect(kept.predictions.map(({ what }) => what)).toEqual(['peakPower', 'highestBoost']);
    expect(await keepMatchPrediction(book, trial.id, 'B', { draws: 80, seed: 5 })).toMatchObject({
      ok: false,
      remarks: [{ code: 'kept-already' }],
    });
    const [power, boost] = kept.predictions;
    const match = solveMatch(bundle.combinations[1]!.input);
    expect(boost!.value).toBeCloseTo(Math.max(...match.figures.boost), 0);
    expect(power!.value).not.toBe(Math.max(...match.figures.brakePower));
    expect(kept.basis).toContain('carried to SAE J1349');
    for (const { low, value, high, madeBy, curve } of kept.predictions) {
      expect(low).toBeLessThan(value);
      expect(value).toBeLessThan(high);
      expect(madeBy).toMatchObject({ seed: 5 });
      expect(curve?.engineSpeedRpm.length).toBeGreaterThan(10);
    }
    const ledger = (await keptPredictions(book)).filter(({ prediction }) => prediction.trialId === trial.id);
    expect(ledger.map(({ measured, inside }) => [measured, inside])).toEqual([
      [null, null],
      [null, null],
    ]);
    await undo(book, null, { units: 'si', decimalMark: '.' });
    const left = (await keptPredictions(book)).filter(({ prediction }) => prediction.trialId === trial.id);
    expect(left).toEqual([]);
  });
});

test('checking a combination says what its match says: the smaller pulley brings the impeller near its limit', async () => {
  const report = await done(checkThing(book, 'Supercharged, base cam, smaller blower pulley'));
  expect(report.findings.map(({ ruleId }) => ruleId)).toContain('V20');
  const alone = await done(checkThing(book, 'Naturally aspirated, base cam'));
  expect(alone.findings.map(({ ruleId }) => ruleId)).not.toContain('V20');
});

test('one combination by itself is matched from every pull of its engine', async () => {
  const bundle = await done(matchOfCombination(book, 'Supercharged, base cam'));
  expect(bundle.trialId).toBeNull();
  expect(bundle.combinations).toHaveLength(1);
  expect(bundle.combinations[0]!.fit!.pullIds.length).toBeGreaterThanOrEqual(3);
});
