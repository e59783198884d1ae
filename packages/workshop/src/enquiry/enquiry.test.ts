import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Enquiry, Rung } from '@pullbook/core/reach';
import type { Result } from '@pullbook/core/remark';
import { type Book, openBook } from '@pullbook/store';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { amendPull } from '../amend-pull.ts';
import { setAudience } from '../audience.ts';
import { makeDemoBook } from '../demo-book.ts';
import { history, undo } from '../history.ts';
import { predict } from '../predictions.ts';
import { changePartsList } from '../reach/parts-list.ts';
import { writtenPull } from '../written-pull.ts';
import { answerCardOf } from './answer-card.ts';
import { askedWords } from './asked-words.ts';
import { enquiriesPage } from './enquiries-page.ts';
import { enquiryReport } from './enquiry-report.ts';
import { keepEnquiry } from './keep-enquiry.ts';
import { enquiryOf } from './kept-enquiry.ts';
import { leaveCard } from './leave-card.ts';
import { planRung } from './plan-rung.ts';

const US = { units: 'us', decimalMark: '.' } as const;
const BASE = 'Supercharged, base cam';
/** Little is searched and few draws are made: what is kept and what becomes of it is looked at here, not the search. */
const REQUEST = {
  power: '500 hp',
  without: ['fuel', 'cooler', 'supercharger', 'stepUp', 'breathing', 'speedLimit'],
  mostChanges: 1,
  draws: 40,
} as const;
const CARD = { format: 'svg', size: '1080p', theme: 'light', ground: true } as const;

let folder = '';
let book: Book;
let asked: Enquiry;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-enquiry-'));
  await makeDemoBook(join(folder, 'demo'));
  book = await openBook(join(folder, 'demo'), { create: null });
  // Two sizes that are well apart, so that both stand on the ladder whatever the draws of this book are.
  const blowerPulleys = [{ diameter: '80 mm' }, { diameter: '82 mm' }];
  accepted(await changePartsList(book, JSON.stringify({ blowerPulleys, crankPulleys: [] })));
  asked = accepted(await keepEnquiry(book, BASE, REQUEST));
}, 60_000);
afterAll(async () => {
  await book.close();
  await rm(folder, { recursive: true, force: true });
});

function accepted<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.remarks.map(({ message }) => message).join('\n'));
  return result.value;
}

/** The demo has pulls of the 80 mm pulley. */
const isPulled = ({ changes }: Rung): boolean =>
  changes.some(({ edits }) => edits.some(({ text }) => /^80(\.0)? mm$/.test(text ?? '')));

const refusalOf = (result: Result<unknown>): string => {
  expect(result.ok).toBe(false);
  return result.remarks[0]!.message;
};

test('what was asked is kept with its answer, and comes back as it was given', async () => {
  expect(asked.question).toBe(`How do I make 500 hp with “${BASE}”?`);
  expect(askedWords({ ...asked.asked, without: ['fuel', 'cooler'], boostCap: '10 psi' }, 'Six')).toBe(
    'How do I make 500 hp with “Six”, with at most 10 psi of boost, without another fuel or another cooler?',
  );
  const at = { ...asked.asked, what: 'power at a speed', at: '5000rpm', power: '500hp' } as const;
  expect(askedWords(at, 'Six')).toBe('How do I make 500 hp at 5000 rpm with “Six”?');
  const mean = { ...asked.asked, what: 'average power', window: '3000 rpm to 6500 rpm' } as const;
  expect(askedWords(mean, 'Six')).toBe('How do I average 500 hp over 3000 rpm to 6500 rpm with “Six”?');
  expect(asked.answer.answer.feasible).toBe(true);
  expect(asked.answer.answer.rungs.every(({ made }) => made === null)).toBe(true);
  expect(asked.pullIds.length).toBeGreaterThan(0);
  const { enquiry, remarks, sources } = accepted(await enquiryOf(book, asked.id.slice(0, 8)));
  expect(enquiry).toEqual(asked);
  expect(remarks).toEqual([]);
  for (const id of [asked.combinationId, ...asked.pullIds])
    expect(sources.map((one) => one.id)).toContain(id);
});

test('the same seed over the same book gives the same answer', async () => {
  const again = accepted(await keepEnquiry(book, BASE, REQUEST, { question: 'Once more?' }));
  expect(again.answer).toEqual(asked.answer);
  expect(again.question).toBe('Once more?');
  await book.undo(null);
});

test('a question that cannot be answered is refused in words, and nothing is kept', async () => {
  const before = (await book.enquiryNames()).length;
  expect(refusalOf(await keepEnquiry(book, BASE, { ...REQUEST, power: '5 hp' }))).toMatch(/hp|kW/);
  expect(refusalOf(await keepEnquiry(book, 'no such engine', REQUEST))).toContain('no combination');
  const long = { question: 'x'.repeat(501) };
  expect(refusalOf(await keepEnquiry(book, BASE, REQUEST, long))).toContain('500 letters');
  expect((await book.enquiryNames()).length).toBe(before);
});

test('it is found by words of the question, the target, the combination and the ways', async () => {
  for (const find of ['500 hp', 'base cam', 'pulley', 'how do i']) {
    const page = accepted(await enquiriesPage(book, US, { find }));
    expect(page.rows.map(({ id }) => id)).toEqual([asked.id]);
  }
  expect(accepted(await enquiriesPage(book, US, { find: 'turbine' })).rows).toEqual([]);
  expect(accepted(await enquiriesPage(book, US, { combination: BASE })).total).toBe(1);
  const other = accepted(await enquiriesPage(book, US, { combination: 'Naturally aspirated, base cam' }));
  expect(other).toMatchObject({ total: 0, all: 0 });
});

test('a rung becomes a combination of a trial with its plan and what is foretold, once; one undo takes all back', async () => {
  const { rungs } = asked.answer.answer;
  const number = 1 + rungs.findIndex((one) => !isPulled(one));
  const rung = rungs[number - 1]!;
  const planned = accepted(await planRung(book, asked.id, `${number}`));
  const made = (await book.combination(planned.combination.id))!;
  const [edit] = rung.changes[0]!.edits;
  expect(made.sheet.sections[edit!.section]![edit!.field]!.text).toBe(edit!.text);
  expect(made).toMatchObject({ madeFromId: asked.combinationId, invented: true });
  expect(made.name).toBe(planned.combination.name);
  expect(made.name).toMatch(/^Supercharged, base cam, (crank|blower) pulley \d+ mm$/);

  const trial = (await book.trial(planned.trial.id))!;
  expect(trial.question).toMatch(/^What does (crank|blower) pulley \d+ mm add towards 500 hp\?$/);
  expect(trial.correction).toBe(asked.answer.standard.id);
  expect(trial.pulls.every(({ key }) => key === 'A')).toBe(true);
  expect(trial.plan!.pulls.map(({ key }) => key)).toContain('B');
  // Pulls enough to see what is foretold on average over the speeds, not the smallest gain that matters.
  const meanOf = ({ power: { value } }: typeof rung.curve) =>
    value.reduce((sum, one) => sum + one, 0) / value.length;
  const foretold = meanOf(rung.curve) / meanOf(asked.answer.answer.now.curve) - 1;
  expect(trial.plan!.gainRatio).toBeCloseTo(Math.max(foretold, 0.01), 3);

  const { factor } = asked.answer.standard;
  const [boost, power] = await book.predictions([trial.id]);
  expect(power).toMatchObject({ key: 'B', what: 'peakPower', madeBy: asked.madeBy });
  expect(power).toMatchObject({
    value: rung.peakPower.value,
    low: rung.peakPower.low,
    high: rung.peakPower.high,
  });
  expect(Math.max(...power!.curve!.power.value) * factor).toBeCloseTo(rung.peakPower.value, -2);
  expect(boost).toMatchObject({ what: 'highestBoost', value: rung.highestBoost!.value });
  expect(power!.basis).toContain(`Rung ${number} of enquiry ${asked.id.slice(0, 8)}`);
  const late = { key: 'B', peakPower: '1 hp', low: '1 hp', high: '2 hp', basis: 'guess' };
  expect((await predict(book, trial.id, late)).ok).toBe(true);
  await book.undo(null);

  const again = await planRung(book, asked.id, rung.id);
  expect(refusalOf(again)).toContain(`became the trial "${trial.question}"`);
  const { steps } = await history(book, US);
  const step = steps.find(({ words }) => words.startsWith('Went on'))!;
  expect(step).toMatchObject({
    words: `Went on with the answer to “How do I make 500 hp with ‘${BASE}’?”`,
    changes: [{ label: 'Became', after: made.name }],
    thing: { kind: 'trial', id: trial.id },
  });
  accepted(await undo(book, step.uid, US));
  expect(await book.combination(made.id)).toBeNull();
  expect(await book.trial(trial.id)).toBeNull();
  expect((await book.enquiry(asked.id))!.became).toEqual([]);
});

test('hardware that was pulled is not planned, and what was only planned is not added once more', async () => {
  const { rungs } = asked.answer.answer;
  const there = rungs.find(isPulled);
  expect(there).toBeDefined();
  const same = refusalOf(await planRung(book, asked.id, there!.id));
  expect(same).toContain('"Supercharged, base cam, smaller blower pulley", pulled 3 times');
  const { id } = rungs.find((one) => !isPulled(one))!;
  const first = accepted(await planRung(book, asked.id, id));
  // As asked of it once more: another enquiry knows nothing of what became of the first.
  await book.changeEnquiry(asked.id, { became: [] }, 'for the test');
  const second = accepted(await planRung(book, asked.id, id));
  expect(second.combination).toEqual({ ...first.combination, wasThere: true });
  expect(second.trial.id).not.toBe(first.trial.id);
  expect(await book.predictions([second.trial.id])).toHaveLength(2);
  await book.undo(null);
  expect(await book.trial(second.trial.id)).toBeNull();
  expect(await book.combination(first.combination.id)).not.toBeNull();
  expect(refusalOf(await planRung(book, asked.id, '99'))).toContain('no rung "99"');
});

test('a card is drawn with its figures in it, and noted when it leaves', async () => {
  const out = join(folder, 'cards');
  const draft = accepted(await leaveCard(book, asked.id, US, CARD, { folder: out, draft: true }));
  expect((await book.enquiry(asked.id))!.cards).toEqual([]);
  const svg = await readFile(draft.path, 'utf8');
  expect(svg).toContain('Computed, not measured');
  const left = accepted(await leaveCard(book, asked.id, US, CARD, { folder: out }));
  expect(await readFile(left.path, 'utf8')).toBe(svg);
  const { cards } = (await book.enquiry(asked.id))!;
  expect(cards).toMatchObject([
    { name: left.path.split('/').at(-1), hash: expect.stringMatching(/^[0-9a-f]{64}$/) },
  ]);
  accepted(await leaveCard(book, asked.id, US, CARD, { folder: out }));
  expect((await book.enquiry(asked.id))!.cards).toHaveLength(1);
  expect(refusalOf(await leaveCard(book, asked.id, US, CARD, { folder: left.path }))).toContain('is a file');
  expect(enquiryReport((await book.enquiry(asked.id))!)).toMatchObject({
    cards,
    feasible: true,
    schemaVersion: 1,
  });
});

test('private pulls among the nearest are left out and that is said; an answer that rests on them does not leave unasked', async () => {
  const nearOnly = asked.answer.near
    .flatMap(({ pullIds }) => pullIds)
    .find((id) => !asked.pullIds.includes(id))!;
  expect(nearOnly).toBeDefined();
  accepted(await setAudience(book, nearOnly, { who: 'shop' }, ''));
  const card = await answerCardOf(book, asked.id, US, CARD);
  expect(card.remarks).toMatchObject([{ code: 'near-left-out' }]);
  await book.undo(null);
  accepted(await setAudience(book, asked.pullIds[0]!, { who: 'customer' }, ''));
  expect(refusalOf(await answerCardOf(book, asked.id, US, CARD))).toContain('not for everyone');
  expect((await answerCardOf(book, asked.id, US, { ...CARD, privateToo: true })).ok).toBe(true);
  await book.undo(null);
});

test('what is no longer so since is said, and the answer stays as it was given', async () => {
  const [pullId] = asked.pullIds;
  accepted(await amendPull(book, pullId!, { operator: 'R. Roe' }, 'his name'));
  const { enquiry, remarks } = accepted(await enquiryOf(book, asked.id));
  expect(enquiry.answer).toEqual(asked.answer);
  expect(remarks.map(({ code }) => code)).toEqual(['rests-on-amended']);
  // A pull that is only shown among the nearest and was amended did not come since.
  const beside = asked.answer.near
    .flatMap(({ pullIds }) => pullIds)
    .find((id) => !asked.pullIds.includes(id))!;
  accepted(await amendPull(book, beside, { operator: 'R. Roe' }, 'his name'));
  const carried = { standard: 'observed', factor: 1 } as const;
  const pull = { ...writtenPull({ combinationId: asked.combinationId }, carried), id: 'new', name: 'New' };
  const figures = { peakPower: 4e5, peakPowerRpm: null, peakTorque: null, peakTorqueRpm: null };
  await book.addPulls([
    { ...pull, form: 'summary', channels: [], summary: figures, origin: 'remembered', fileHash: null },
  ]);
  await book.changeSettings({ ruleThresholds: {} });
  const later = accepted(await enquiryOf(book, asked.id));
  expect(later.remarks.map(({ code }) => code)).toEqual(['pulls-since', 'rests-on-amended', 'parts-changed']);
  expect(later.remarks[0]!.message).toContain(
    '1 pull of this engine came since this was asked and is not in the answer.',
  );
});
