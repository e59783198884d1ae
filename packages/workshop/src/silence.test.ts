import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Book, openBook } from '@pullbook/store';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type CheckReport, checkThing } from './check.ts';
import { makeDemoBook } from './demo-book.ts';
import { lastStep, undo } from './history.ts';
import { pullPageOf } from './pull-pages.ts';
import { rulesReport, setRuleThreshold } from './rules.ts';
import { letRuleSpeak, silenceRule } from './silence.ts';

const US = { units: 'us', decimalMark: '.' } as const;
let parent = '';
let book: Book;

beforeAll(async () => {
  parent = await mkdtemp(join(tmpdir(), 'pullbook-rules-'));
  await makeDemoBook(join(parent, 'demo'));
  book = await openBook(join(parent, 'demo'));
});
afterAll(async () => {
  await book.close();
  await rm(parent, { recursive: true, force: true });
});

function accepted<T>(result: { ok: true; value: T } | { ok: false; remarks: { message: string }[] }): T {
  if (!result.ok) throw new Error(result.remarks[0]!.message);
  return result.value;
}
const check = async (id: string): Promise<CheckReport> => accepted(await checkThing(book, id));

test('nothing of the demo raises an alarm', async () => {
  const things = [...(await book.pullNames()), ...(await book.trials()), ...(await book.combinationNames())];
  expect(things.length).toBeGreaterThan(10);
  for (const { id } of things) {
    const alarms = (await check(id)).findings.filter((one) => one.level === 'alarm');
    expect(alarms.map((one) => one.message)).toEqual([]);
  }
});

test('a silenced finding stays with its reason, on the page too, and speaks again after an undo', async () => {
  // Drawn tighter than any pull is, so that there is a finding to silence.
  accepted(await setRuleThreshold(book, 'V39.oil', '60 psi', US));
  const names = await book.pullNames();
  const found = await firstWith(
    names.map(({ id }) => id),
    'V39',
  );
  const asked = { rule: 'v39', kind: 'pull', given: found.id, reason: 'dry sump, its own gauge' } as const;
  const refused = await silenceRule(book, { ...asked, reason: ' ' });
  expect(refused).toMatchObject({ ok: false, remarks: [{ code: 'no-reason' }] });
  accepted(await silenceRule(book, asked));
  const of = async () => (await check(found.id)).findings.filter((one) => one.ruleId === 'V39');
  expect(await of()).toMatchObject([{ silenced: { reason: asked.reason } }]);
  const page = accepted(await pullPageOf(book, found.id, US));
  expect(page.findings.find((one) => one.ruleId === 'V39')).toMatchObject({ silent: true });
  const step = (await lastStep(book, US))!;
  const { name } = names.find(({ id }) => id === found.id)!;
  expect(step.words).toBe(`Silenced the rule “V39” for the pull “${name}”`);
  accepted(await undo(book, step.uid, US));
  expect(await of()).toMatchObject([{ silenced: null }]);
  accepted(await silenceRule(book, asked));
  accepted(await letRuleSpeak(book, asked));
  expect(await of()).toMatchObject([{ silenced: null }]);
  expect(await letRuleSpeak(book, asked)).toMatchObject({ ok: false, remarks: [{ code: 'not-silenced' }] });
  accepted(await setRuleThreshold(book, 'V39.oil', null, US));
  expect(await of()).toEqual([]);
});

test('a threshold is set with its unit, and refused where it is drawn elsewhere or has another kind', async () => {
  const set = accepted(await setRuleThreshold(book, 'v17.duty', '90 %', US));
  const duty = set.rules.find(({ id }) => id === 'V17')!.thresholds[0]!;
  expect(duty).toMatchObject({ value: 0.9, isOwn: true, text: '90\u00a0%', catalogueText: '85\u00a0%' });
  accepted(await setRuleThreshold(book, 'V17.duty', null, US));
  expect((await rulesReport(book, US)).rules.flatMap((one) => one.thresholds).some((one) => one.isOwn)).toBe(
    false,
  );
  for (const [id, text, code] of [
    ['V01.share', '1 %', 'threshold-fixed'],
    ['V99.x', '1 %', 'unknown-threshold'],
    ['V39.oil', '9 rpm', 'unit-of-another-kind'],
  ] as const)
    expect(await setRuleThreshold(book, id, text, US)).toMatchObject({ ok: false, remarks: [{ code }] });
});

async function firstWith(ids: readonly string[], ruleId: string): Promise<{ id: string }> {
  for (const id of ids) if ((await check(id)).findings.some((one) => one.ruleId === ruleId)) return { id };
  throw new Error(`no pull of the demo has a finding of ${ruleId}`);
}
