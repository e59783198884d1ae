import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { channelsHash } from '../channels-hash.ts';
import type { Book } from '../model.ts';
import { openBook } from '../open-book.ts';
import { originalsFolder } from '../places.ts';
import { asProgram } from './as-program.ts';
import { importedFile, PULLS_A_FILE, randomFrom } from './imported-file.ts';
import { faultsOfEdits, saidEdits } from './kill-edits.ts';

export interface KillRound {
  round: number;
  /** When the importers were killed, ms after their start, or after what they said. */
  killedAfter: string;
  /** Files that an importer said were accepted. */
  accepted: number;
  /** Edits, undoings and backups that it said were done. */
  edits: number;
  /** Files found that it had no time to speak of. */
  acceptedUnsaid: number;
  /** Originals set aside: killed between the rename and the commit. */
  setAside: number;
  /** Half-written parts on the shelves. */
  parts: number;
  /** What is wrong with the book afterwards; empty: nothing. */
  faults: string[];
}

/** That an importer says at the most, from `open` on, before its moment is counted: by lines, for a busy machine is slow. */
const MOST_LINES = 6;

export interface KillPlan {
  folder: string;
  rounds: number;
  seed: string;
  /** Importers at the same time. */
  writers?: number;
  /** What each of them does; see `importer.ts`. Default `imports`. */
  work?: 'imports' | 'everything';
  onRound?: (round: KillRound) => void;
}

/**
 * Starts importers on a book, kills them (SIGKILL) at a seeded random moment after a seeded number of words, opens the book and looks whether every
 * accepted file is there whole and no half one is. In one round of four the moment lies before the book is open.
 */
export async function killRounds({
  folder,
  rounds,
  seed,
  writers = 1,
  work = 'imports',
  onRound,
}: KillPlan): Promise<KillRound[]> {
  const random = randomFrom(seed);
  const results: KillRound[] = [];
  const everAccepted: string[] = [];
  const known = new Set<string>();
  let setAsideBefore = 0;
  for (let round = 0; round < rounds; round++) {
    const early = random() < 0.25;
    // A program of one file has its book open within some 100 ms.
    const delay = Math.round(random() * (early ? 150 : 250));
    const plans = Array.from({ length: writers }, (_, writer) => ({
      prefix: `${seed}-${round}-${writer}`,
      early,
      work,
      delay: writer === 0 ? delay : Math.round(random() * 250),
      lines: early ? 0 : 1 + Math.floor(random() * MOST_LINES),
    }));
    const lines = (await Promise.all(plans.map((plan) => importUntilKilled(folder, plan)))).flat();
    const accepted = lines.flatMap((line) =>
      line.startsWith('accepted ') ? [line.slice('accepted '.length)] : [],
    );
    const edits = saidEdits(lines);
    everAccepted.push(...accepted);

    const book = await openBook(folder, { create: { name: 'Book to be killed' } });
    const found = (await book.files()).map(({ name }) => name).filter((name) => !known.has(name));
    for (const name of found) known.add(name);
    const faults = [
      ...accepted.filter((name) => !known.has(name)).map((name) => `${name} was accepted and is lost`),
      ...(await faultsOf(book, round === rounds - 1 ? [...known] : found)),
      ...(await faultsOfShelves(book)),
      ...(work === 'everything' ? await faultsOfEdits(book, edits, backupsOf(folder)) : []),
    ];
    if (round === rounds - 1) {
      faults.push(...everAccepted.filter((name) => !known.has(name)).map((name) => `${name} was lost later`));
    }
    await book.close();
    const setAside = namesUnder(join(originalsFolder(folder), 'set-aside')).length;
    const result: KillRound = {
      round,
      killedAfter: `${delay} ms after ${early ? 'start' : 'a word'}`,
      accepted: accepted.length,
      edits: Object.values(edits).flat().length,
      acceptedUnsaid: found.filter((name) => !accepted.includes(name)).length,
      setAside: setAside - setAsideBefore,
      parts: shelves(folder).filter(({ name }) => name.endsWith('.part')).length,
      faults,
    };
    setAsideBefore = setAside;
    results.push(result);
    onRound?.(result);
  }
  return results;
}

async function importUntilKilled(
  folder: string,
  { prefix, lines, delay, work }: { prefix: string; lines: number; delay: number; work: string },
): Promise<string[]> {
  const program = [...asProgram('importer'), folder, prefix, work, backupsOf(folder)];
  const child = spawn(process.execPath, program, { stdio: ['ignore', 'pipe', 'inherit'] });
  const exit = once(child, 'close');
  let printed = '';
  const said = new Promise<void>((resolve) => {
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      printed += text;
      if (printed.split('\n').length > lines) resolve();
    });
  });
  if (lines > 0) await Promise.race([said, exit]);
  await sleep(delay);
  const stillRunning = child.exitCode === null;
  child.kill('SIGKILL');
  await exit;
  if (!stillRunning) throw new Error(`the importer ended on its own with code ${child.exitCode}`);
  // The last line may be cut off by the kill: only whole lines were said.
  return printed.split('\n').slice(0, -1);
}

const backupsOf = (folder: string): string => `${folder}-backups`;

/** What is not whole of these files: their bytes, the number of their pulls, each channel. */
async function faultsOf(book: Book, names: string[]): Promise<string[]> {
  const faults: string[] = [];
  for (const name of names) {
    try {
      await assertWhole(book, name);
    } catch (failure) {
      faults.push(`${name}: ${(failure as Error).message}`);
    }
  }
  return faults;
}

async function assertWhole(book: Book, name: string): Promise<void> {
  const expected = importedFile(name);
  const bytes = await book.original(expected.file.hash);
  if (!Buffer.from(expected.bytes).equals(bytes)) throw new Error('its original has other bytes');
  const pulls = await book.pulls(await book.pullIdsOfFile(expected.file.hash));
  if (pulls.length !== PULLS_A_FILE) throw new Error(`it has ${pulls.length} pulls`);
  for (const [index, pull] of pulls.entries()) {
    const isWhole = channelsHash(pull.channels) === channelsHash(expected.pulls[index]!.channels);
    if (!isWhole) throw new Error(`its pull ${pull.id} is not whole`);
  }
}

/** An original on the shelves without a row, a row without its original, a pull without its file. */
async function faultsOfShelves(book: Book): Promise<string[]> {
  const onShelves = new Set(
    shelves(book.folder).flatMap(({ name }) => (name.endsWith('.part') ? [] : [name])),
  );
  const files = new Set((await book.files()).map(({ hash }) => hash));
  const pulls = (await book.pullHeads()).length;
  return [
    ...[...onShelves].filter((hash) => !files.has(hash)).map((hash) => `original ${hash} without a row`),
    ...[...files].filter((hash) => !onShelves.has(hash)).map((hash) => `row ${hash} without an original`),
    ...(pulls === files.size * PULLS_A_FILE ? [] : [`${pulls} pulls of ${files.size} files`]),
  ];
}

function shelves(folder: string): { name: string }[] {
  const root = originalsFolder(folder);
  return namesUnder(root)
    .filter((shelf) => /^[0-9a-f]{2}$/.test(shelf))
    .flatMap((shelf) => namesUnder(join(root, shelf)).map((name) => ({ name })));
}

const namesUnder = (folder: string): string[] => (existsSync(folder) ? readdirSync(folder) : []);
