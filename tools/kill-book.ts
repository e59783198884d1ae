/**
 * Kills importers of a book at random moments, many times, and prints what was found afterwards. The long form of the
 * store's own kill test:
 *
 *   npx tsx tools/kill-book.ts --rounds 200 [--seed text] [--writers 2] [--work everything | safety]
 *
 * `--work everything`: they also amend, change, undo and make backups. `--work safety`: a merge, a backup and a rescue are
 * killed in turn, each on books of its own. A new book is begun every hundred rounds, so that
 * looking at all of it stays quick. Ends with exit code 1 when anything accepted was lost or anything half is there.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { type KillRound, killRounds } from '../packages/store/src/testing/kill-rounds.ts';
import { killSafety } from '../packages/store/src/testing/kill-safety.ts';

const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '50' },
    seed: { type: 'string', default: 'kill' },
    writers: { type: 'string', default: '1' },
    work: { type: 'string', default: 'imports' },
  },
});
const rounds = Number(values.rounds);
const writers = Number(values.writers);
if (!Number.isInteger(rounds) || rounds < 1 || !Number.isInteger(writers) || writers < 1) {
  console.error(
    `--rounds and --writers are whole numbers from 1; given were ${values.rounds} and ${values.writers}.`,
  );
  process.exit(2);
}

const work = workAsked(values.work);

const ROUNDS_A_BOOK = 100;
const columns = ['round', 'killed', 'accepted', 'edits', 'not said', 'set aside', 'parts', 'faults'];
const print = (cells: (string | number)[]) =>
  console.log(cells.map((cell, index) => String(cell).padEnd(index === 1 ? 22 : 10)).join(''));

const parent = mkdtempSync(join(tmpdir(), 'pullbook-kill-'));
try {
  const faults = work === 'safety' ? await killActs() : await killWriters(work);
  process.exitCode = faults === 0 ? 0 : 1;
} finally {
  rmSync(parent, { recursive: true, force: true });
}

async function killActs(): Promise<number> {
  print(['round', 'killed', 'act', 'done', 'faults']);
  const results = await killSafety({
    folder: parent,
    rounds,
    seed: values.seed,
    onRound({ round, act, killedAfter, isKilled, isDone, faults }) {
      const when = isKilled ? `after ${killedAfter} ms` : 'had ended';
      print([round + 1, when, act, isDone ? 'yes' : 'no', faults.length]);
      for (const fault of faults) console.log(`    ${fault}`);
    },
  });
  const faults = results.flatMap((round) => round.faults).length;
  const killed = results.filter((round) => round.isKilled).length;
  console.log(`${rounds} rounds: ${killed} killed before the end, ${faults} faults.`);
  return faults;
}

async function killWriters(work: 'imports' | 'everything'): Promise<number> {
  print(columns);
  const results: KillRound[] = [];
  for (let done = 0; done < rounds; done += ROUNDS_A_BOOK) {
    const plan = {
      rounds: Math.min(ROUNDS_A_BOOK, rounds - done),
      seed: `${values.seed}-${done}`,
      writers,
      work,
    };
    const book = join(parent, `book-${done}`);
    results.push(...(await killRounds({ ...plan, folder: book, onRound: printRound })));
    for (const used of [book, `${book}-backups`]) rmSync(used, { recursive: true, force: true });
  }
  const sum = (of: (round: KillRound) => number) => results.reduce((total, round) => total + of(round), 0);
  const faults = sum((round) => round.faults.length);
  console.log(
    `${rounds} rounds, ${writers} importing: ${sum((round) => round.accepted)} files accepted, ${sum((round) => round.edits)} edits and backups, ` +
      `${sum((round) => round.acceptedUnsaid)} more committed before they could be said, ` +
      `${sum((round) => round.setAside)} originals set aside, ${results.at(-1)!.parts} parts left, ${faults} faults.`,
  );
  return faults;
}

function printRound(round: KillRound): void {
  const { accepted, edits, acceptedUnsaid, setAside, parts, faults } = round;
  print([
    round.round + 1,
    round.killedAfter,
    accepted,
    edits,
    acceptedUnsaid,
    setAside,
    parts,
    faults.length,
  ]);
  for (const fault of faults) console.log(`    ${fault}`);
}

function workAsked(given: string): 'imports' | 'everything' | 'safety' {
  if (given === 'imports' || given === 'everything' || given === 'safety') return given;
  console.error(`--work is imports, everything or safety; given was ${given}.`);
  process.exit(2);
}
