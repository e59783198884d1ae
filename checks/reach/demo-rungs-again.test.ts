import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sheetToPlain } from '@pullbook/core/combination';
import { type Book, openBook } from '@pullbook/store';
import {
  addCombinationFromText,
  makeDemoBook,
  mapOfRung,
  matchFromFile,
  matchReportOf,
  type ReachRequest,
  reachOfCombination,
  reachReport,
  rungFile,
  runReach,
} from '@pullbook/workshop';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { gotten, peakOf } from './ask.ts';
import { editedFile, type PlainFile } from './edited-file.ts';

const BASE = 'Supercharged, base cam';

let folder = '';
let book: Book;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-rungs-again-'));
  await makeDemoBook(join(folder, 'demo'));
  book = await openBook(join(folder, 'demo'), { create: null });
}, 60_000);
afterAll(async () => {
  await book.close();
  await rm(folder, { recursive: true, force: true });
});

async function asked(request: ReachRequest) {
  const bundle = gotten(await reachOfCombination(book, BASE, { draws: 20, ...request }));
  const answer = await runReach(bundle.input);
  const told = reachReport(bundle, answer, null).rungs;
  expect(told.length).toBeGreaterThan(0);
  return answer.rungs.map((rung, place) => ({
    rung,
    told: told[place]!,
    upToRpm: rung.curve.engineSpeedRpm.at(-1)!,
    name: told[place]!.changes.map(({ text }) => text).join('; '),
  }));
}

type Way = Awaited<ReturnType<typeof asked>>[number];

async function expectFileGivesIt({ rung, told, upToRpm, name }: Way): Promise<void> {
  const written = gotten(rungFile(rung, await mapOfRung(book, rung), { name: 'way' }));
  const from = { fileName: 'way.yaml', folder, book: null, bands: null, words: null };
  const again = peakOf(gotten(await matchFromFile(written, from)).points, upToRpm);
  expect(Math.abs(again / told.peakPowerObservedKw! - 1), name).toBeLessThan(1e-9);
}

test.each<[ReachRequest]>([
  [{ power: '520 hp' }],
  [{ power: '520 hp', boostCap: '10 psi' }],
  [{ power: '600 hp' }],
])(
  '%o of the demo engine: the file of each rung gives its very power',
  { timeout: 120_000 },
  async (request) => {
    for (const way of await asked(request)) await expectFileGivesIt(way);
  },
);

/**
 * In the book a planned combination is matched in its own right: its fit comes from the pulled combination nearest to it. Where that is not the one that was
 * asked, or a cam was pulled with its own baseline, the two rest on other pulls: 1.2 % was seen before the second limit was set.
 */
const MOST_OFF = { onTheSamePulls: 0.005, onOtherPulls: 0.015 };

test('540 hp: each rung by its file, and made a combination by its edits alone and matched in the book', {
  timeout: 120_000,
}, async () => {
  const { sheet, engineId } = (await book.combinations()).find(({ name }) => name === BASE)!;
  const { schemaVersion, name: _, ...sections } = sheetToPlain(sheet);
  const lines: string[] = [];
  for (const way of await asked({ power: '540 hp' })) {
    await expectFileGivesIt(way);
    const { told, upToRpm, name } = way;
    const base = { combination: sections, baseline: { table: '' } } as PlainFile;
    const { combination } = editedFile(base, told.changes);
    const sheetText = JSON.stringify({ schemaVersion, name: `540 hp, ${told.id}`, ...combination });
    const { id } = gotten(await addCombinationFromText(book, { sheetText, engineId }));
    const { matches } = gotten(await matchReportOf(book, { combination: id }, { bands: null, words: null }));
    const off = peakOf(matches[0]!.points, upToRpm) / told.peakPowerObservedKw! - 1;
    const takenFrom = matches[0]!.assumptions.find(({ code }) => code === 'fit-taken')!.message;
    const isAlike = takenFrom.includes(`"${BASE}"`) && told.changes.every(({ part }) => part !== 'breathing');
    lines.push(`${(100 * off).toFixed(3)} % ${isAlike ? 'on the same pulls' : 'on other pulls'}: ${name}`);
    expect(Math.abs(off), name).toBeLessThan(isAlike ? MOST_OFF.onTheSamePulls : MOST_OFF.onOtherPulls);
  }
  console.info(lines.join('\n'));
  expect(lines.filter((line) => line.includes('same pulls')).length).toBeGreaterThan(2);
});
