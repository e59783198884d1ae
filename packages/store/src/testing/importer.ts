/**
 * Run as a program of its own, to be killed: works on the book of a folder without end, and prints each act once it was
 * accepted. `imports`: brings in files. `everything`: beside that amends pulls, changes a trial with its plan and a setting,
 * changes a compressor map, silences a rule and lets it speak, keeps predictions, notes publications and where they appeared,
 * keeps enquiries and makes trials of their rungs, undoes, and makes backups, while it goes on.
 */
import { writeSync } from 'node:fs';
import { backUpBook } from '../backup/backup-book.ts';
import { type Book, BookTrouble } from '../model.ts';
import { openBook } from '../open-book.ts';
import { enquiry, planned } from './enquiries.ts';
import { importedFile } from './imported-file.ts';
import {
  combination,
  compressorMap,
  engine,
  orderOf,
  planOf,
  prediction,
  publication,
  trial,
} from './things.ts';

const [folder = '', prefix = '', work = 'imports', backups = ''] = process.argv.slice(2);
const book = await openBook(folder, { create: { name: 'Book to be killed' }, lockWaitMs: 60_000 });
writeSync(1, 'open\n');
const TRIAL = `trial of ${prefix}`;
let isCopying = false;
for (let index = 0; ; index++) {
  const { file, bytes, pulls } = importedFile(`${prefix}-${index}`);
  await book.addFileWithPulls(file, bytes, pulls);
  writeSync(1, `accepted ${file.name}\n`);
  if (work === 'everything') await edit(book, pulls[0]!.id, `${prefix}-${index}`, index);
}

async function edit(open: Book, pullId: string, token: string, index: number): Promise<void> {
  await open.amendPull(pullId, { operator: token }, token);
  writeSync(1, `done ${token}\n`);
  if (index === 0) await open.addTrial(trial(TRIAL));
  else
    await open.changeTrial(
      trial(TRIAL, { remark: token, plan: planOf(token), runningOrder: orderOf(token) }),
      `trial ${token}`,
    );
  if (index > 0) writeSync(1, `done trial ${token}\n`);
  await judge(open, pullId, token, index);
  await keepMap(open, token, index);
  await publish(open, pullId, token);
  await enquire(open, pullId, token, index);
  await open.changeSettings({ [prefix]: token });
  writeSync(1, `set ${token}\n`);
  if (index % 2 === 1) {
    const [undone] = await open.undo(await open.stamp(`pull ${pullId}`));
    writeSync(1, `undone ${undone!.uid}\n`);
  }
  if (index % 3 === 1 && !isCopying) void backUp();
}

/** A compressor map, and better knowledge of it: its notes and its points change together. */
async function keepMap(open: Book, token: string, index: number): Promise<void> {
  const id = `map of ${prefix}`;
  if (index === 0) return open.addCompressorMap(compressorMap(id, { notes: token, name: token }));
  await open.changeCompressorMap(compressorMap(id, { notes: token, name: token }), `map ${token}`);
  writeSync(1, `done map ${token}\n`);
}

/** What left the shop, resting on a pull, and then where it appeared. */
async function publish(open: Book, pullId: string, token: string): Promise<void> {
  const id = `publication ${token}`;
  await open.addPublication(publication(id, TRIAL, { sentence: token, pullIds: [pullId] }));
  writeSync(1, `published ${token}\n`);
  await open.changeLinks(id, [{ where: token, day: null, note: '' }], `linked ${token}`);
  writeSync(1, `done linked ${token}\n`);
}

/** A target that was asked, then a rung of it that becomes a trial: its four things at once. */
async function enquire(open: Book, pullId: string, token: string, index: number): Promise<void> {
  const asked = `asked of ${prefix}`;
  if (index === 0) {
    const own = { ...engine, id: `engine of ${prefix}` };
    await open.addCombination({ ...combination(asked), engineId: own.id, packageIds: [] }, own);
  }
  const id = `enquiry ${token}`;
  await open.addEnquiry(enquiry(id, asked, { question: token, pullIds: [pullId] }));
  writeSync(1, `asked ${token}\n`);
  const made = planned(id, token, asked);
  const ofPrefix = { engineId: `engine of ${prefix}`, packageIds: [] };
  await open.addPlanned({ ...made, combination: { ...made.combination!, ...ofPrefix } });
  writeSync(1, `planned ${token}\n`);
}

/** What a verdict needs to be kept: a prediction before the pull, a rule silenced, every other time let speak again. */
async function judge(open: Book, pullId: string, token: string, index: number): Promise<void> {
  await open.addPrediction(prediction(token, TRIAL));
  writeSync(1, `predicted ${token}\n`);
  const at = new Date().toISOString();
  const { id } = await open.silence({
    ruleId: 'V01',
    subject: `pull ${pullId}`,
    reason: `silenced ${token}`,
    at,
  });
  writeSync(1, `done silenced ${token}\n`);
  if (index % 2 === 0) return;
  await open.letSpeak(id, `speaks ${token}`);
  writeSync(1, `done speaks ${token}\n`);
}

/** Beside the other work, as a server does it. */
async function backUp(): Promise<void> {
  isCopying = true;
  try {
    const { madeAt } = await backUpBook(folder, backups, new Date());
    writeSync(1, `backed up ${madeAt}\n`);
  } catch (failure) {
    // Two programs at the same thousandth of a second would take the same name; nothing else is expected.
    if (!(failure instanceof BookTrouble)) throw failure;
    writeSync(1, `no backup: ${failure.message}\n`);
  } finally {
    isCopying = false;
  }
}
