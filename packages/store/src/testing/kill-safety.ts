import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { backUpBook } from '../backup/backup-book.ts';
import { checkBackup } from '../backup/check.ts';
import { backupsIn } from '../backup/model.ts';
import { faultsOfDatabase } from '../database-faults.ts';
import { mergeBooks } from '../merge/merge-books.ts';
import { openBook } from '../open-book.ts';
import { databaseFile } from '../places.ts';
import { rescueBook } from '../rescue/rescue-book.ts';
import type { Act } from './act-once.ts';
import { asProgram } from './as-program.ts';
import { enquiry } from './enquiries.ts';
import { importedFile, randomFrom } from './imported-file.ts';
import { combination, compressorMap, engine, prediction, publication, trial } from './things.ts';

export interface SafetyKill {
  round: number;
  act: Act;
  /** ms after the act began. */
  killedAfter: number;
  /** Whether it was killed before its end: else there was nothing to survive. */
  isKilled: boolean;
  /** Whether what was killed was nevertheless done. */
  isDone: boolean;
  faults: string[];
}

export interface SafetyKillPlan {
  folder: string;
  rounds: number;
  seed: string;
  onRound?: (round: SafetyKill) => void;
}

const ACTS = ['merge', 'backup', 'rescue'] as const;
const OURS = Array.from({ length: 6 }, (_, index) => `ours ${index}`);
const THEIRS = Array.from({ length: 6 }, (_, index) => `theirs ${index}`);
const LATER = new Date('2026-03-15T10:00:00.000Z');

/**
 * Kills (SIGKILL) a merge, a backup, a rescue in turn, each on a fresh copy of the same books, at a seeded random moment;
 * then looks whether what was there before is there whole, the act is there whole or not at all, and whether it can be done
 * again to its end.
 */
export async function killSafety({ folder, rounds, seed, onRound }: SafetyKillPlan): Promise<SafetyKill[]> {
  const random = randomFrom(seed);
  const sound = join(folder, 'sound');
  await makeBooks(sound);
  const results: SafetyKill[] = [];
  for (let round = 0; round < rounds; round++) {
    const act = ACTS[round % ACTS.length]!;
    const places = placesIn(join(folder, 'round'));
    rmSync(places.all, { recursive: true, force: true });
    cpSync(sound, places.all, { recursive: true });
    if (act === 'rescue') damage(places.book);
    // Early moments more often: there most is under way. The late ones meet the end, or come after it.
    const killedAfter = Math.round(random() ** 2 * 900);
    const isKilled = await actUntilKilled(act, places, killedAfter);
    const { isDone, faults } = await lookAfter(act, places);
    const result: SafetyKill = { round, act, killedAfter, isKilled, isDone, faults };
    results.push(result);
    onRound?.(result);
  }
  return results;
}

type Places = ReturnType<typeof placesIn>;
const placesIn = (all: string) => ({
  all,
  book: join(all, 'book'),
  laptop: join(all, 'laptop'),
  backups: join(all, 'backups'),
});

async function makeBooks(all: string): Promise<void> {
  const { book, laptop, backups } = placesIn(all);
  mkdirSync(all, { recursive: true });
  for (const [place, names] of [
    [book, OURS],
    [laptop, THEIRS],
  ] as const) {
    const made = await openBook(place, { create: { name: place } });
    for (const name of names) {
      const { file, bytes, pulls } = importedFile(name);
      await made.addFileWithPulls(file, bytes, pulls);
    }
    await made.addCompressorMap(mapOf(names));
    await made.addTrial(trial(trialOf(names)));
    await made.addPrediction(predictionOf(names));
    await made.addPublication(publicationOf(names));
    const own = { ...engine, id: `engine of ${names[0]}`, name: names[0]! };
    const asked = { ...combination(`asked of ${names[0]}`), engineId: own.id, packageIds: [] };
    await made.addCombination(asked, own);
    await made.addEnquiry(enquiryOf(names));
    await made.close();
  }
  await backUpBook(book, backups, new Date('2026-03-01T10:00:00.000Z'));
}

/** What stands with the files of a book, each half of which would be a fault. */
const mapOf = (names: readonly string[]) => compressorMap(`map of ${names[0]}`, { name: names[0]! });
const trialOf = (names: readonly string[]) => `trial of ${names[0]}`;
const predictionOf = (names: readonly string[]) => prediction(names[0]!, trialOf(names));
const publicationOf = (names: readonly string[]) => publication(`published ${names[0]}`, trialOf(names));

const enquiryOf = (names: readonly string[]) => enquiry(`enquiry of ${names[0]}`, `asked of ${names[0]}`);

function damage(book: string): void {
  const bytes = readFileSync(databaseFile(book));
  writeFileSync(databaseFile(book), bytes.fill(0x42, 0, 100));
}

async function actUntilKilled(act: Act, { book, laptop, backups }: Places, delay: number): Promise<boolean> {
  const other = act === 'backup' ? backups : laptop;
  const child = spawn(process.execPath, [...asProgram('act-once'), act, book, other], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let printed = '';
  const begun = new Promise<void>((resolve) => {
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      printed += text;
      if (printed.includes('begins')) resolve();
    });
  });
  const exit = once(child, 'close');
  await Promise.race([begun, exit]);
  await sleep(delay);
  child.kill('SIGKILL');
  await exit;
  const said = printed.split('\n').find((line) => line.startsWith('{'));
  if (said !== undefined && !said.includes('"none"'))
    throw new Error(`the ${act} failed on its own: ${said}`);
  return said === undefined;
}

async function lookAfter(act: Act, places: Places): Promise<{ isDone: boolean; faults: string[] }> {
  const faults: string[] = [];
  const { book, laptop, backups } = places;
  let isDone = false;
  if (act === 'rescue') {
    isDone =
      existsSync(databaseFile(book)) && (await faultsOfDatabase(databaseFile(book))).faults.length === 0;
    if (!isDone) await rescueBook(book, () => null, LATER);
    const asides = readdirSync(book).filter((name) => name.startsWith('damaged-'));
    const untouched = asides.filter((name) => readFileSync(databaseFile(join(book, name)))[0] === 0x42);
    if (untouched.length === 0) faults.push('the damaged file is nowhere as it was');
  }
  const before = await namesWhole(book, faults);
  for (const name of OURS) if (!before.includes(name)) faults.push(`${name} is lost`);
  const came = before.filter((name) => THEIRS.includes(name));
  if (came.length !== 0 && came.length !== THEIRS.length) faults.push(`half of the merge is there: ${came}`);
  const has = came.length === 0 ? [OURS] : [OURS, THEIRS];
  faults.push(...(await faultsOfMatch(book, has)));
  if (act === 'merge') {
    isDone = came.length > 0;
    await mergeBooks(book, laptop, { dryRun: false });
    const after = await namesWhole(book, faults);
    if (after.length !== OURS.length + THEIRS.length) faults.push(`merged again there are ${after}`);
    faults.push(...(await faultsOfMatch(book, [OURS, THEIRS])));
  }
  if (act === 'backup') {
    isDone = (await backupsIn(backups)).length > 1;
    await backUpBook(book, backups, LATER);
  }
  const all = await backupsIn(backups);
  if (all.length < (act === 'backup' ? 2 : 1)) faults.push('a backup is lost');
  for (const { madeAt } of all) faults.push(...(await checkBackup(backups, madeAt)).faults);
  const left = readdirSync(book).filter((name) => name.endsWith('.part'));
  if (left.length > 0) faults.push(`left behind: ${left}`);
  return { isDone, faults };
}

/** Compressor maps, predictions, publications and enquiries that are not those that came with these files. */
async function faultsOfMatch(folder: string, came: readonly string[][]): Promise<string[]> {
  const book = await openBook(folder);
  try {
    const is = [
      await book.compressorMaps(),
      await book.predictions(),
      await book.publications(),
      await book.enquiries(),
    ];
    const wanted = [came.map(mapOf), came.map(predictionOf), came.map(publicationOf), came.map(enquiryOf)];
    const inOrder = (things: { id: string }[]) => things.toSorted((a, b) => (a.id < b.id ? -1 : 1));
    return isDeepStrictEqual(is.map(inOrder), wanted.map(inOrder))
      ? []
      : [`maps, predictions, publications and enquiries are ${JSON.stringify(is)}`];
  } finally {
    await book.close();
  }
}

/** Files of a book whose bytes and curves are those that they must be; what is not is told. */
async function namesWhole(folder: string, faults: string[]): Promise<string[]> {
  const { faults: found } = await faultsOfDatabase(databaseFile(folder));
  faults.push(...found);
  const book = await openBook(folder);
  try {
    const files = await book.files();
    for (const { hash, name } of files) {
      const expected = importedFile(name);
      if (!Buffer.from(expected.bytes).equals(await book.original(hash)))
        faults.push(`${name} has other bytes`);
      const pulls = await book.pulls(await book.pullIdsOfFile(hash));
      const values = (one: typeof pulls) =>
        one.map(({ channels }) => channels.map((channel) => [...channel.values]));
      if (JSON.stringify(values(pulls)) !== JSON.stringify(values(expected.pulls)))
        faults.push(`the pulls of ${name} are not whole`);
    }
    return files.map(({ name }) => name);
  } finally {
    await book.close();
  }
}
