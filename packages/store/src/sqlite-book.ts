import type { OriginalFile, Pull } from '@pullbook/core/pull';
import { addOriginal } from './add-original.ts';
import type { Connection, Rows } from './connection.ts';
import { readContents, readInfo } from './contents.ts';
import { type Book, BookTrouble } from './model.ts';
import { readOriginal } from './originals.ts';
import { amendmentSides } from './pull-amendment.ts';
import { insertCombination, readCombinations, reviseCombination } from './rows/combinations.ts';
import { insertEngine, readEngines } from './rows/engines.ts';
import { insertFile, readFiles } from './rows/files.ts';
import { logAct, readLog } from './rows/log.ts';
import { insertPackage, readPackages } from './rows/packages.ts';
import { insertPull, readPullHeads, readPullIdsOfFile, readPulls, updatePullHead } from './rows/pulls.ts';
import { insertSession, readSessions } from './rows/sessions.ts';
import { insertSetUp, readSetUps } from './rows/set-ups.ts';
import { insertTrial, readTrials, replaceTrial } from './rows/trials.ts';
import { reading, writing } from './transaction.ts';

/** The book over an open connection. */
export function bookOver(connection: Connection): Book {
  const { folder } = connection;
  const read = <T>(body: (rows: Rows) => Promise<T>) => reading(connection, body);
  const write = <T>(body: (rows: Rows) => Promise<T>) => writing(connection, body);

  /** Adds one thing with its line in the log. */
  const add = <T extends { id: string }>(
    kind: string,
    thing: T,
    insert: (rows: Rows, thing: T) => Promise<void>,
  ) =>
    write(async (rows) => {
      await insert(rows, thing);
      await logAct(rows, { act: `${kind} added`, subject: `${kind} ${thing.id}` });
    });

  const addPulls = async (rows: Rows, pulls: Pull[]) => {
    for (const pull of pulls) {
      await insertPull(rows, pull);
      await logAct(rows, { act: 'pull added', subject: `pull ${pull.id}` });
    }
  };

  return {
    folder,
    info: () => read((rows) => readInfo(rows, connection)),
    close: () => connection.rows.destroy(),

    engines: () => read(readEngines),
    addEngine: (engine) => add('engine', engine, insertEngine),
    combinations: () => read((rows) => readCombinations(rows)),
    combination: (id) => read(async (rows) => (await readCombinations(rows, id))[0] ?? null),
    addCombination: (combination) => add('combination', combination, insertCombination),
    amendCombination: (id, sheet, reason) =>
      write(async (rows) => {
        const [before] = await readCombinations(rows, id);
        if (!before) throw new Error(`there is no combination ${id} in the book`);
        const after = await reviseCombination(rows, before, sheet);
        await logAct(rows, {
          act: 'combination amended',
          subject: `combination ${id}`,
          reason,
          before,
          after,
        });
        return after;
      }),
    packages: () => read(readPackages),
    addPackage: (item) => add('package', item, insertPackage),
    setUps: () => read(readSetUps),
    addSetUp: (setUp) => add('set-up', setUp, insertSetUp),
    sessions: () => read(readSessions),
    addSession: (session) => add('session', session, insertSession),

    pullHeads: () => read(async (rows) => (await readPullHeads(rows)).reverse()),
    pull: (id) => read(async (rows) => (await readPulls(rows, [id], folder))[0] ?? null),
    pulls: (ids) => read((rows) => readPulls(rows, ids, folder)),
    addFileWithPulls: (file, bytes, pulls) =>
      addOriginal(connection, file, bytes, async (rows) => {
        const foreign = pulls.find(({ fileHash }) => fileHash !== file.hash);
        if (foreign) throw new Error(`pull ${foreign.id} does not come from the file ${file.hash}`);
        const [known] = await readFiles(rows, file.hash);
        if (known) throw alreadyThere(known);
        await insertFile(rows, file);
        await logAct(rows, { act: 'file added', subject: `file ${file.hash}` });
        await addPulls(rows, pulls);
      }),
    addPulls: (pulls) => write((rows) => addPulls(rows, pulls)),
    amendPull: (id, amendment, reason) =>
      write(async (rows) => {
        const [pull] = await readPulls(rows, [id], folder);
        if (!pull) throw new Error(`there is no pull ${id} in the book`);
        const { before, after } = amendmentSides(pull, amendment);
        const amended = { ...pull, ...after };
        await updatePullHead(rows, amended);
        await logAct(rows, { act: 'pull amended', subject: `pull ${id}`, reason, before, after });
        return amended;
      }),
    files: () => read((rows) => readFiles(rows)),
    file: (hash) => read(async (rows) => (await readFiles(rows, hash))[0] ?? null),
    original: (hash) => readOriginal(folder, hash),
    pullIdsOfFile: (hash) => read((rows) => readPullIdsOfFile(rows, hash)),

    trials: () => read((rows) => readTrials(rows)),
    trial: (id) => read(async (rows) => (await readTrials(rows, id))[0] ?? null),
    addTrial: (trial) => add('trial', trial, insertTrial),
    changeTrial: (trial, reason) =>
      write(async (rows) => {
        const [before] = await readTrials(rows, trial.id);
        if (!before) throw new Error(`there is no trial ${trial.id} in the book`);
        await replaceTrial(rows, trial);
        await logAct(rows, {
          act: 'trial changed',
          subject: `trial ${trial.id}`,
          reason,
          before,
          after: trial,
        });
      }),

    log: () => read(readLog),
    contents: () => read((rows) => readContents(rows, connection)),
  };
}

function alreadyThere({ name, addedAt }: OriginalFile): BookTrouble {
  const message = `The file is in the book already, as "${name}", added ${addedAt}. Nothing was added; use the pulls it gave then.`;
  return new BookTrouble('exists', message);
}
