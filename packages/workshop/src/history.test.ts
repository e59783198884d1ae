import { openBook } from '@pullbook/store';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { amendPull } from './amend-pull.ts';
import { clockCaution } from './book-report.ts';
import { addCombinationFromText } from './combinations.ts';
import { pullDetailsFromText } from './edge/pull-details.ts';
import { editTrial } from './edit-trial.ts';
import { changeEngine } from './engines.ts';
import { history, lastStep, subjectNamed, undo } from './history.ts';
import { changesOf } from './history-words.ts';
import { importFile } from './import-file.ts';
import { startTrial } from './start-trial.ts';
import { sheetText, stepTestFile, temporaryBook } from './testing/temporary-book.ts';
import { trialPageOf } from './trial-pages.ts';

const US = { units: 'us', decimalMark: '.' } as const;
const SI = { units: 'si', decimalMark: ',' } as const;
let made: Awaited<ReturnType<typeof temporaryBook>>;
let pullId = '';
let trialId = '';

function accepted<T>(result: { ok: true; value: T } | { ok: false; remarks: { message: string }[] }): T {
  if (!result.ok) throw new Error(result.remarks[0]!.message);
  return result.value;
}

async function filled() {
  made = await temporaryBook();
  const { book } = made;
  for (const name of ['Short', 'Long']) {
    accepted(await addCombinationFromText(book, { sheetText: sheetText(name), engineName: 'Six' }));
    const combinationId = (await book.combinations()).find((one) => one.name === name)!.id;
    const file = { name: `${name}.csv`, bytes: stepTestFile(name === 'Long' ? 1.1 : 1) };
    const imported = accepted(await importFile(book, { ...file, details: { name, combinationId } }));
    if (name === 'Short') pullId = imported.pulls[0]!.id;
  }
  const combinations = ['Short', 'Long'].map((name) => ({ combinationId: name, shortName: '' }));
  const wanted = { question: 'Which cam?', kind: 'comparison' as const, combinations };
  trialId = accepted(await startTrial(book, { ...wanted, correction: 'observed' })).id;
}

const plain = (text: string) => text.replace(/[\u00a0\u2009\u202f]/g, ' ');
const amend = async (text: Parameters<typeof pullDetailsFromText>[0], reason: string) =>
  amendPull(made.book, pullId, accepted(pullDetailsFromText(text, '2026-03-14T10:00:00Z')), reason);

describe('history', () => {
  beforeEach(filled);
  afterEach(() => made.remove());

  test('says what was changed field by field in the units asked for, with the reason', async () => {
    accepted(
      await amend(
        { cell: 'cell 2', weather: { pressure: '98.2 kPa', temperature: '30 C', humidity: '45 %' } },
        'sheet found',
      ),
    );
    const [step] = (await history(made.book, SI)).steps;
    expect(step).toMatchObject({
      words: 'Amended the pull “Short”',
      reason: 'sheet found',
      thing: { kind: 'pull', id: pullId },
      isUndone: false,
      canUndo: true,
    });
    const changes = step!.changes.map(({ label, before, after }) => [label, before, plain(after)]);
    expect(changes).toContainEqual(['Cell', '', 'cell 2']);
    // 98.2 kPa, 30 °C and 45 % as they were typed, with the comma asked for.
    expect(changes).toContainEqual(['Weather, pressure', '', '98,20 kPa']);
    expect(changes).toContainEqual(['Weather, temperature', '', '30,0 °C']);
    expect(changes).toContainEqual(['Relative humidity', '', '45,0 %']);
  });

  test('a trial: roles by the names of the pulls; an engine: its build', async () => {
    const pulls = [{ pullId, role: 'rejected' as const, reason: 'throttle lifted' }];
    accepted(await editTrial(made.book, trialId, { pulls, question: 'Which cam then?' }, 'looked again'));
    accepted(await changeEngine(made.book, 'Six', { buildRevision: '2' }, 'new rings'));
    const [engine, trial] = (await history(made.book, US)).steps;
    expect(trial!.changes).toEqual([
      { label: 'Question', before: 'Which cam?', after: 'Which cam then?' },
      { label: 'Short', before: 'counted', after: 'rejected: throttle lifted' },
    ]);
    expect(engine).toMatchObject({
      words: 'Changed the engine “Six”',
      changes: [{ label: 'Build revision', before: '1', after: '2' }],
    });
  });

  test('a running order and where something appeared are told in words', () => {
    const nameOf = (_: string, id: string) => id;
    const steps = [
      { id: 'gain', isShown: true, title: 'What it adds', seconds: 6 },
      { id: 'why', isShown: false, title: null, seconds: null },
    ];
    const order = { act: 'trial changed', before: {}, after: { runningOrder: { steps, speed: 2 } } };
    expect(changesOf(order, nameOf, US)).toEqual([
      { label: 'Running order', before: '', after: 'gain “What it adds” 6 s; why, not shown' },
      { label: 'Running order, speed', before: '', after: '2' },
    ]);
    const link = { where: 'club magazine', day: '2026-05-01', note: '' };
    const linked = { act: 'publication changed', before: { links: [] }, after: { links: [link] } };
    expect(changesOf(linked, nameOf, US)).toEqual([
      { label: 'Appeared in', before: '', after: 'club magazine, 2026-05-01' },
    ]);
  });

  test('a file with its pulls is one step; undone it says so, and its page is gone', async () => {
    accepted(await undo(made.book, null, US));
    const step = accepted(await undo(made.book, null, US));
    expect(step.words).toBe('Undone: added the file “Long.csv” with 1 pull');
    expect(step.thing).toBeNull();
    const { steps } = await history(made.book, US);
    expect(steps.slice(0, 2).map(({ isUndoing }) => isUndoing)).toEqual([true, true]);
    const added = steps.find(({ words }) => words === 'Added the file “Long.csv” with 1 pull');
    expect(added).toMatchObject({ isUndone: true, canUndo: false });
    expect((await lastStep(made.book, US))?.uid).toBe(step.uid);
  });

  test('a combination with its new engine is one step, under the name of the combination', async () => {
    const { steps } = await history(made.book, US);
    const words = steps.map((one) => one.words);
    expect(words).toContain('Added the combination “Short”');
    expect(words).not.toContain('Added the engine “Six”');
  });

  test('pages hang together and tear no step apart; one thing has a history of its own', async () => {
    const all = (await history(made.book, US)).steps.map(({ uid }) => uid);
    const paged: string[] = [];
    for (let before: number | undefined; ; ) {
      const page = await history(made.book, US, { limit: 1, ...(before ? { before } : {}) });
      paged.push(...page.steps.map(({ uid }) => uid));
      if (page.next === null) break;
      before = page.next;
    }
    expect(paged).toEqual(all);
    const subject = accepted(await subjectNamed(made.book, pullId));
    const own = await history(made.book, US, { subject });
    expect(own.steps.map(({ words }) => words)).toEqual(['Added the pull “Short”']);
  });

  test('an entry is undone by its number too; an unknown one is refused', async () => {
    accepted(await amend({ cell: 'cell 2' }, 'wrong cell'));
    const { id } = (await made.book.log()).at(-1)!;
    accepted(await undo(made.book, String(id), US));
    expect((await made.book.pull(pullId))?.cell).toBeNull();
    expect(await undo(made.book, '99999', US)).toMatchObject({
      ok: false,
      remarks: [{ code: 'unknown-id' }],
    });
  });
});

describe('two at once', () => {
  beforeEach(filled);
  afterEach(() => made.remove());

  test('notes of two programs at once are both kept', async () => {
    const other = await openBook(made.book.folder);
    const note = (text: string) => accepted(pullDetailsFromText({ notes: text }, '2026-03-14T10:00:00Z'));
    const outcomes = await Promise.all(
      ['one', 'two', 'three', 'four'].map((text, index) =>
        amendPull(index % 2 === 0 ? made.book : other, pullId, note(text), `note ${text}`),
      ),
    );
    expect(outcomes.every(({ ok }) => ok)).toBe(true);
    const kept = (await made.book.pull(pullId))!.notes.map(({ text }) => text);
    expect(kept.sort()).toEqual(['four', 'one', 'three', 'two']);
    await other.close();
  });

  test('what a person looked at before another wrote is refused; on the stamp of now it goes through', async () => {
    const { stamp } = accepted(await trialPageOf(made.book, trialId, US));
    accepted(await editTrial(made.book, trialId, { remark: 'theirs' }, 'theirs', stamp));
    const mine = () => editTrial(made.book, trialId, { question: 'Mine?' }, 'mine', stamp);
    await expect(mine()).rejects.toMatchObject({ code: 'changed meanwhile' });
    const now = await made.book.stamp(`trial ${trialId}`);
    accepted(await editTrial(made.book, trialId, { question: 'Mine?' }, 'mine', now));
    expect(await made.book.trial(trialId)).toMatchObject({ question: 'Mine?', remark: 'theirs' });
  });

  test('a trial becomes a survey and back', async () => {
    accepted(await editTrial(made.book, trialId, { kind: 'survey' }, 'other engines'));
    expect((await made.book.trial(trialId))?.kind).toBe('survey');
    accepted(await undo(made.book, null, US));
    expect((await made.book.trial(trialId))?.kind).toBe('comparison');
  });
});

describe('the clock', () => {
  beforeAll(filled);
  afterAll(() => made.remove());

  test.each([
    [0, null],
    [90_000, null],
    [600_000, '10 min'],
    [3 * 3_600_000, '3 h'],
    [400 * 86_400_000, '400 days'],
  ])('%d ms behind the last entry: %s', (clockBehindMs, words) => {
    const said = clockCaution({ ...made.book, clockBehindMs });
    if (words === null) expect(said).toBeNull();
    else expect(said).toContain(`stands ${words} before the last entry`);
  });
});
