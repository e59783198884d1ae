import { OPEN_AUDIENCE, PLAIN_TREATMENT, type Pull } from '@pullbook/core/pull';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { addCombinationFromText } from './combinations.ts';
import { editTrial } from './edit-trial.ts';
import { undo } from './history.ts';
import { listInBackground } from './listed-pulls.ts';
import { predict } from './predictions.ts';
import { shopDigestsOf } from './pull-digests.ts';
import { scatterHistoryOf } from './scatter-history.ts';
import { changeSettings, settingsOf } from './settings.ts';
import { figuresOf } from './shop-figures.ts';
import { startTrial } from './start-trial.ts';
import { sheetText, temporaryBook } from './testing/temporary-book.ts';
import { answerOf } from './trial-answer.ts';

let opened: Awaited<ReturnType<typeof temporaryBook>>;
beforeEach(async () => {
  opened = await temporaryBook();
});
afterEach(() => opened.remove());

const injected = (name: string) => `${sheetText(name)}fuelSystem:\n  type: port injection\n`;

async function combination(name: string): Promise<string> {
  const added = await addCombinationFromText(opened.book, { sheetText: injected(name), engineName: 'Six' });
  if (!added.ok) throw new Error(added.remarks[0]!.message);
  return added.value.id;
}

/** An invented step test whose power is off by a share, on a day of March 2026. */
function pullOf(id: string, combinationId: string, offset: number, about: Partial<Pull> = {}): Pull {
  const speeds = Float64Array.from({ length: 26 }, (_, row) => 2000 + 180 * row);
  const channel = (meaning: 'engineSpeed' | 'torque', values: Float64Array) => ({
    meaning,
    name: meaning,
    unit: meaning === 'torque' ? 'N·m' : 'r/min',
    kind: meaning,
    values,
    origin: 'measured' as const,
  });
  return {
    id,
    name: id,
    combinationId,
    setUpId: null,
    sessionId: null,
    orderInSession: null,
    recordedAt: '2026-03-16T10:00:00+01:00',
    cell: 'Cell 1',
    operator: null,
    form: 'curve',
    channels: [
      channel('engineSpeed', speeds),
      channel(
        'torque',
        speeds.map((rpm) => Math.exp(offset) * (400 - ((rpm - 4200) / 300) ** 2)),
      ),
    ],
    summary: null,
    weather: null,
    carried: { standard: 'sae-j1349', factor: 1 },
    sweep: { momentOfInertia: null, inertiaCompensated: 'unknown' },
    tune: {},
    places: {},
    notes: [],
    events: [],
    outcome: 'completed',
    treatment: PLAIN_TREATMENT,
    audience: OPEN_AUDIENCE,
    origin: 'measured',
    fileHash: null,
    invented: false,
    ...about,
  };
}

const at = (hour: number, day = 16): Pick<Pull, 'recordedAt'> => ({
  recordedAt: `2026-03-${day}T${String(hour).padStart(2, '0')}:00:00+01:00`,
});

describe('what the pulls of a book say of its scatter', () => {
  test('repeats of one day come back as their standard deviation; aborted, rejected and retuned ones do not count', async () => {
    const { book } = opened;
    const base = await combination('Base');
    await book.addPulls([
      pullOf('one', base, -0.002, at(9)),
      pullOf('two', base, 0, at(10)),
      pullOf('three', base, 0.002, at(11)),
      pullOf('aborted', base, 0.2, { ...at(12), outcome: 'aborted' }),
      pullOf('retuned', base, 0.1, { ...at(13), tune: { sparkAdvance: '30°' } }),
      pullOf('remembered', base, 0.1, { ...at(14), origin: 'remembered' }),
      pullOf('rejected', base, -0.1, at(15)),
    ]);
    const trial = await startTrial(book, {
      question: 'How does it repeat?',
      kind: 'comparison',
      combinations: [
        { combinationId: base, shortName: 'base' },
        { combinationId: await combination('Cam'), shortName: 'cam' },
      ],
      pullIds: ['rejected'],
    });
    if (!trial.ok) throw new Error(trial.remarks[0]!.message);
    await editTrial(
      book,
      trial.value.id,
      { pulls: [{ pullId: 'rejected', key: 'A', role: 'rejected', reason: 'belt off' }] },
      'belt off',
    );
    const { figures, pullsNotRead } = await figuresOf(book);
    expect(pullsNotRead).toBe(0);
    const [kind] = figures.repeatability;
    expect(kind).toMatchObject({ cell: 'Cell 1', induction: 'injected', clusters: 1, pulls: 3 });
    // -2, 0, 2 thousandths: 2 thousandths; a digest keeps a millionth.
    expect(kind!.overTime[0]!.sigma).toBeCloseTo(0.002, 5);
  });

  test('pulls of a comparison are not its own prior; others are, and the settings stand behind both', async () => {
    const { book } = opened;
    const base = await combination('Base');
    const days = [2, 3, 4, 5, 6, 9, 10, 11];
    await book.addPulls(
      days.flatMap((day) =>
        [-0.01, 0, 0.01].map((offset, hour) => pullOf(`${day} ${hour}`, base, offset, at(9 + hour, day))),
      ),
    );
    const sheets = (await book.combinations()).map(({ sheet }) => sheet);
    const asked = { cells: ['Cell 1'], sheets };
    const all = await scatterHistoryOf(book, { ...asked, without: [] });
    expect(all.pull.from).toBe('shop');
    expect(all.pull.sigma).toBeGreaterThan(0.007);
    const names = days.flatMap((day) => [0, 1, 2].map((hour) => `${day} ${hour}`));
    const none = await scatterHistoryOf(book, { ...asked, without: names });
    expect(none.pull).toEqual({ sigma: 0.004, degreesOfFreedom: 6, from: 'built-in' });
    await changeSettings(book, { scatterPrior: { pull: { injected: '0.3 %' } } });
    const said = await scatterHistoryOf(book, { ...asked, without: names });
    expect(said.pull).toEqual({ sigma: 0.003, degreesOfFreedom: 6, from: 'setting' });
    expect(said.setUp.from).toBe('built-in');
  });

  test('an amendment shows in the figures at once', async () => {
    const { book } = opened;
    const base = await combination('Base');
    await book.addPulls([pullOf('one', base, 0, at(9)), pullOf('two', base, 0.01, at(10))]);
    expect((await figuresOf(book)).figures.repeatability[0]!.clusters).toBe(1);
    await book.amendPull('two', { outcome: 'aborted' }, 'ran out of fuel');
    expect((await figuresOf(book)).figures.repeatability[0]!.clusters).toBe(0);
  });

  test('digests are read again only for what they rest on', async () => {
    const { book } = opened;
    const base = await combination('Base');
    await book.addPulls([pullOf('one', base, 0, at(9)), pullOf('two', base, 0.01, at(10))]);
    const first = await shopDigestsOf(book);
    await changeSettings(book, { worthwhileGain: '2 %' });
    await book.silence({ ruleId: 'V01', subject: 'pull one', reason: 'known', at: '2026-03-16T12:00:00Z' });
    expect(await shopDigestsOf(book)).toBe(first);
    await book.amendPull('two', { cell: 'Cell 2' }, 'wrong cell');
    expect((await shopDigestsOf(book)).clusters).toHaveLength(2);
    await undo(book, null, { units: 'si', decimalMark: '.' });
    expect((await shopDigestsOf(book)).clusters).toHaveLength(1);
  });

  test('a trial waits for no long reading, and says while it lasts what its band rests on', async () => {
    const { book } = opened;
    const [base, cam] = [await combination('Base'), await combination('Cam')];
    const others = Array.from({ length: 150 }, (_, pull) => pullOf(`other ${pull}`, base, 0, at(9, 2)));
    const own = [pullOf('one', base, 0, at(9)), pullOf('two', cam, 0.01, at(10))];
    await book.addPulls([...others, ...own]);
    const started = await startTrial(book, {
      question: 'What does it add?',
      kind: 'comparison',
      combinations: [base, cam].map((combinationId, index) => ({ combinationId, shortName: `${index}` })),
      pullIds: own.map(({ id }) => id),
    });
    if (!started.ok) throw new Error(started.remarks[0]!.message);
    const said = async () => {
      const { remarks } = await answerOf(book, (await book.trial(started.value.id))!);
      return remarks.find(({ code }) => code === 'history-being-read')?.message;
    };
    expect(await said()).toMatch(/from the \d+ read so far; \d+ more are being read/);
    await listInBackground(book);
    expect(await said()).toBeUndefined();
  });
});

describe('the shop’s guess as a setting', () => {
  test('each figure with its unit; what cannot stand is named, and nothing is kept then', async () => {
    const { book } = opened;
    const kept = await changeSettings(book, {
      scatterPrior: '{"setUp":"0.4 %","withinLengthRpm":"300 rpm","degreesOfFreedom":{"pull":"12"}}',
      worthwhileGain: '0,5 %',
    });
    expect(kept.ok).toBe(true);
    expect(await settingsOf(book)).toMatchObject({
      scatterPrior: { setUp: 0.004, withinLengthRpm: 300, degreesOfFreedom: { pull: 12 } },
      worthwhileGain: 0.005,
    });
    const wrong = await changeSettings(book, { scatterPrior: { setUp: '0.5', day: '-1 %', luck: 1 } });
    expect(wrong.ok ? [] : wrong.remarks.map(({ message }) => message)).toEqual([
      expect.stringContaining('setUp: "0.5" cannot stand there'),
      expect.stringContaining('day: "-1 %" cannot stand there'),
      expect.stringContaining('there is no figure "luck"'),
    ]);
    expect((await settingsOf(book)).scatterPrior).toMatchObject({ setUp: 0.004 });
    await changeSettings(book, { scatterPrior: null, worthwhileGain: 'none' });
    expect(await settingsOf(book)).toMatchObject({ scatterPrior: null, worthwhileGain: 0.01 });
  });
});

describe('predictions', () => {
  const SAID = { key: 'b', gain: '3 %', low: '1 %', high: '5 %', basis: 'a guess' };

  async function trialOf(pulls: Pull[], combinations: string[]): Promise<string> {
    await opened.book.addPulls(pulls);
    const trial = await startTrial(opened.book, {
      question: 'What does it add?',
      kind: 'comparison',
      combinations: combinations.map((combinationId, index) => ({ combinationId, shortName: `${index}` })),
      pullIds: pulls.map(({ id }) => id),
    });
    if (!trial.ok) throw new Error(trial.remarks[0]!.message);
    return trial.value.id;
  }

  test('kept before the pull, held against what came out, refused after it, withdrawn by undo', async () => {
    const { book } = opened;
    const [base, cam] = [await combination('Base'), await combination('Cam')];
    const id = await trialOf([pullOf('one', base, 0)], [base, cam]);
    const kept = await predict(book, id, SAID);
    expect(kept).toMatchObject({ ok: true, value: { key: 'B', what: 'meanGain', value: 0.03, low: 0.01 } });
    await predict(book, id, { ...SAID, gain: null, peakPower: '100 kW', low: '90 kW', high: '110 kW' });
    expect((await figuresOf(book)).predictions.map(({ inside }) => inside)).toEqual([null, null]);

    await book.addPulls([pullOf('two', cam, Math.log(1.04), at(11))]);
    await editTrial(book, id, { pulls: [{ pullId: 'two', role: 'counted' }] }, 'pulled');
    const { predictions } = await answerOf(book, (await book.trial(id))!);
    const gain = predictions.find(({ prediction }) => prediction.what === 'meanGain')!;
    expect(gain.measured).toBeCloseTo(0.04, 9);
    expect(gain.inside).toBe(true);
    // 400 - 18.8 N·m near 5,500 r/min are far above 110 kW.
    const peak = predictions.find(({ prediction }) => prediction.what === 'peakPower')!;
    expect(peak.inside).toBe(false);

    const late = await predict(book, id, SAID);
    expect(late.ok ? '' : late.remarks[0]!.message).toContain('B has 1 counted pull in this trial already');
  });

  test('undo takes a slip back', async () => {
    const { book } = opened;
    const [base, cam] = [await combination('Base'), await combination('Cam')];
    const id = await trialOf([pullOf('one', base, 0)], [base, cam]);
    await predict(book, id, SAID);
    await undo(book, null, { units: 'si', decimalMark: '.' });
    expect((await figuresOf(book)).predictions).toEqual([]);
  });

  test.each([
    ['an unknown key', { key: 'Z' }, 'no combination Z'],
    ['the gain of the baseline', { key: 'A' }, 'A is the baseline'],
    ['a gain without its sign', { gain: '3' }, '"3" cannot stand there'],
    ['no basis', { basis: ' ' }, 'what the prediction rests on'],
    ['outside its own band', { gain: '7 %' }, 'must lie in its band'],
    ['no band', { low: '3 %', high: '3 %' }, 'is no band at all'],
    ['gain and peak at once', { peakPower: '500 hp' }, 'of one thing'],
  ])('refused: %s', async (_, change, words) => {
    const [base, cam] = [await combination('Base'), await combination('Cam')];
    const id = await trialOf([pullOf('one', base, 0)], [base, cam]);
    const refused = await predict(opened.book, id, { ...SAID, ...change });
    expect(refused.ok ? 'kept' : refused.remarks.map(({ message }) => message).join(' ')).toContain(words);
  });
});
