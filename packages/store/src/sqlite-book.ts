import type { OriginalFile, Pull } from '@pullbook/core/pull';
import { addOriginal } from './add-original.ts';
import type { Connection, Rows } from './connection.ts';
import { readContents, readInfo, readOutline } from './contents.ts';
import { type Book, BookTrouble, type KnownLayout, type LogEntry, type WithdrawnKind } from './model.ts';
import { readOriginal } from './originals.ts';
import { amendmentSides } from './pull-amendment.ts';
import { refuseIfChanged } from './refuse-if-changed.ts';
import { insertCell, readCells, replaceCell } from './rows/cells.ts';
import { insertCombination, readCombinations, reviseCombination } from './rows/combinations.ts';
import { insertCompressorMap, readCompressorMaps, replaceCompressorMap } from './rows/compressor-maps.ts';
import {
  countPulls,
  readCounts,
  readHeadsWith,
  readPullCells,
  readPullNames,
  readTrialIdsOfPulls,
  readTrialNames,
} from './rows/counts-and-names.ts';
import { readDigests, readDigestsAsOf } from './rows/digests.ts';
import { insertEngine, readEngines, replaceEngine } from './rows/engines.ts';
import {
  type EnquiryChange,
  insertEnquiry,
  readEnquiries,
  readEnquiry,
  readEnquiryNames,
  updateEnquiry,
} from './rows/enquiries.ts';
import { insertFile, readFiles, understandFileAs } from './rows/files.ts';
import { findPulls, keepListed, readUnlisted } from './rows/find-pulls.ts';
import { deleteLayout, keepLayout, readLayouts } from './rows/layouts.ts';
import { type Act, logAct, readLastId, readLog, readLogPage, readLogSince, readStamp } from './rows/log.ts';
import { readCombinationNames, readNamed, readNamesOfDay } from './rows/names.ts';
import { insertPackage, readPackages } from './rows/packages.ts';
import { insertPrediction, readPredictions } from './rows/predictions.ts';
import { insertPublication, readPublication, readPublications, updateLinks } from './rows/publications.ts';
import {
  insertPull,
  nextInSession,
  readHeadsOf,
  readNewestPull,
  readPullHeads,
  readPullIdsOfFile,
  readPulls,
  updatePullHead,
} from './rows/pulls.ts';
import { insertSession, readSessions } from './rows/sessions.ts';
import { insertSetUp, readSetUps } from './rows/set-ups.ts';
import { keepSettings, readSettings } from './rows/settings.ts';
import { deleteSilenced, keepSilenced, readSilenced, readSilencedById } from './rows/silenced.ts';
import { readSubjectNames } from './rows/subject-names.ts';
import { insertTrial, readTrials, replaceTrial } from './rows/trials.ts';
import { deleteWithdrawn, isWithdrawn, onlyThere } from './rows/withdrawn.ts';
import { reading, writing } from './transaction.ts';
import { missingOf, type RestsOn } from './undo/missing-of.ts';
import { undoStep } from './undo/undo-step.ts';

/** The book over an open connection. `clockBehindMs`: how far the clock stood behind the log at the opening. */
export function bookOver(connection: Connection, clockBehindMs = 0): Book {
  const { folder } = connection;
  const now = () => connection.now().toISOString();
  const read = <T>(body: (rows: Rows) => Promise<T>) => reading(connection, body);
  const write = <T>(body: (rows: Rows) => Promise<T>) => writing(connection, body);
  const log = (rows: Rows, act: Act): Promise<LogEntry> => logAct(rows, { at: now(), ...act });

  /** The things of a kind, without those that were withdrawn. */
  const there = <T>(
    kind: WithdrawnKind,
    all: (rows: Rows) => Promise<T[]>,
    idOf: (thing: T) => string,
  ): Promise<T[]> => read(async (rows) => onlyThere(rows, kind, await all(rows), idOf));
  const byId = ({ id }: { id: string }) => id;

  const assertThere = async (rows: Rows, restsOn: RestsOn) => {
    const missing = await missingOf(rows, restsOn);
    if (missing) throw missing;
  };

  const insertLogged = async <T extends { id: string }>(
    rows: Rows,
    kind: string,
    thing: T,
    insert: (rows: Rows, thing: T) => Promise<void>,
    step: Pick<Act, 'together'> = {},
  ) => {
    await insert(rows, thing);
    return log(rows, { act: `${kind} added`, subject: `${kind} ${thing.id}`, ...step });
  };

  /** Adds one thing with its line in the log. */
  const add = <T extends { id: string }>(
    kind: string,
    thing: T,
    insert: (rows: Rows, thing: T) => Promise<void>,
    restsOn: RestsOn = {},
  ) =>
    write(async (rows) => {
      await assertThere(rows, restsOn);
      await insertLogged(rows, kind, thing, insert);
    });

  /** Puts a thing as given in the place of the stored one, with both sides in the log. */
  const change = <T extends { id: string }>(
    kind: string,
    after: T,
    said: { reason: string; stamp: string | undefined; restsOn?: RestsOn },
    find: (rows: Rows) => Promise<T | undefined>,
    replace: (rows: Rows, before: T) => Promise<void>,
  ) =>
    write(async (rows) => {
      const subject = `${kind} ${after.id}`;
      await refuseIfChanged(rows, subject, said.stamp);
      await assertThere(rows, said.restsOn ?? {});
      const before = await find(rows);
      if (!before) throw new Error(`there is no ${kind} ${after.id} in the book`);
      await replace(rows, before);
      await log(rows, { act: `${kind} changed`, subject, reason: said.reason, before, after });
    });

  const addPulls = async (rows: Rows, pulls: Pull[], together?: string) => {
    const combinationIds = pulls.flatMap(({ combinationId }) => combinationId ?? []);
    await assertThere(rows, { combinationIds });
    let first = together;
    for (const pull of pulls) {
      const orderInSession = pull.orderInSession ?? (await nextInSession(rows, pull.sessionId));
      await insertPull(rows, { ...pull, orderInSession });
      const entry = await log(rows, {
        act: 'pull added',
        subject: `pull ${pull.id}`,
        ...(first === undefined ? {} : { together: first }),
      });
      first ??= entry.uid;
    }
  };

  const confirmLayout = async (rows: Rows, layout: KnownLayout, step: Pick<Act, 'together'> = {}) => {
    const [before = null] = await readLayouts(rows, layout.fingerprint);
    await keepLayout(rows, layout);
    const subject = `layout ${layout.fingerprint}`;
    return log(rows, { act: 'layout confirmed', subject, before, after: layout, ...step });
  };

  const alterEnquiry = async (
    rows: Rows,
    id: string,
    change: EnquiryChange,
    said: { reason: string; together?: string },
  ) => {
    const stored = await readEnquiry(rows, id);
    if (!stored || (await isWithdrawn(rows, 'enquiry', id)))
      throw new Error(`there is no enquiry ${id} in the book`);
    const fields = Object.keys(change) as (keyof EnquiryChange)[];
    const before = Object.fromEntries(fields.map((field) => [field, stored[field]]));
    await updateEnquiry(rows, id, change);
    await log(rows, { act: 'enquiry changed', subject: `enquiry ${id}`, ...said, before, after: change });
  };

  const stepOf = (first: LogEntry | null) => (first === null ? {} : { together: first.uid });

  const trialRestsOn = (trial: Parameters<Book['addTrial']>[0]): RestsOn => ({
    combinationIds: trial.combinations.map(({ combinationId }) => combinationId),
    pullIds: trial.pulls.map(({ pullId }) => pullId),
  });

  return {
    folder,
    clockBehindMs,
    info: () => read((rows) => readInfo(rows, connection)),
    close: () => connection.rows.destroy(),

    engines: () => there('engine', readEngines, byId),
    addEngine: (engine) => add('engine', engine, insertEngine),
    changeEngine: (engine, reason, stamp) =>
      change(
        'engine',
        engine,
        { reason, stamp },
        async (rows) => (await readEngines(rows)).find(({ id }) => id === engine.id),
        (rows) => replaceEngine(rows, engine),
      ),
    combinations: () => there('combination', (rows) => readCombinations(rows), byId),
    combination: async (id) =>
      (await there('combination', (rows) => readCombinations(rows, id), byId))[0] ?? null,
    combinationNames: () => read(readCombinationNames),
    addCombination: (combination, newEngine) =>
      write(async (rows) => {
        const { engineId, packageIds } = combination;
        await assertThere(rows, { engineIds: newEngine ? [] : [engineId], packageIds });
        const first = newEngine
          ? { together: (await insertLogged(rows, 'engine', newEngine, insertEngine)).uid }
          : {};
        await insertLogged(rows, 'combination', combination, insertCombination, first);
      }),
    amendCombination: (id, sheet, reason, stamp) =>
      write(async (rows) => {
        const subject = `combination ${id}`;
        await refuseIfChanged(rows, subject, stamp);
        const [before] = await readCombinations(rows, id);
        if (!before) throw new Error(`there is no combination ${id} in the book`);
        const after = await reviseCombination(rows, before, sheet);
        await log(rows, { act: 'combination amended', subject, reason, before, after });
        return after;
      }),
    packages: () => there('package', readPackages, byId),
    addPackage: (item) => add('package', item, insertPackage),
    compressorMaps: () => there('compressorMap', (rows) => readCompressorMaps(rows), byId),
    compressorMap: async (id) =>
      (await there('compressorMap', (rows) => readCompressorMaps(rows, id), byId))[0] ?? null,
    addCompressorMap: (map) => add('compressorMap', map, insertCompressorMap),
    changeCompressorMap: (map, reason, stamp) =>
      change(
        'compressorMap',
        map,
        { reason, stamp },
        async (rows) => (await readCompressorMaps(rows, map.id))[0],
        (rows) => replaceCompressorMap(rows, map),
      ),
    setUps: () => read(readSetUps),
    addSetUp: (setUp) => add('set-up', setUp, insertSetUp),
    sessions: () => read(readSessions),
    addSession: (session) => add('session', session, insertSession),

    pullHeads: async () => (await there('pull', readPullHeads, byId)).reverse(),
    pullHeadsOf: (ids) => read((rows) => readHeadsOf(rows, ids)),
    pullHeadsWith: (combinationIds) => read((rows) => readHeadsWith(rows, combinationIds)),
    pullNames: () => read(readPullNames),
    pullCounts: () => read(countPulls),
    pullCells: () => read(readPullCells),
    pullNamesOfDay: (day, cell) => read((rows) => readNamesOfDay(rows, day, cell)),
    newestPull: () => read(readNewestPull),
    findPulls: (query) => read((rows) => findPulls(rows, query)),
    unlisted: (key, most) =>
      read(async (rows) => ({ ids: await readUnlisted(rows, key, most), asOf: await readLastId(rows) })),
    keepListed: (listed, asOf) =>
      write(async (rows) => {
        if ((await readLastId(rows)) !== asOf) return false;
        await keepListed(rows, listed);
        return true;
      }),
    digests: (key) => read((rows) => readDigests(rows, connection.database, key)),
    digestsAsOf: () => read(readDigestsAsOf),
    pull: async (id) => (await there('pull', (rows) => readPulls(rows, [id], folder), byId))[0] ?? null,
    pulls: (ids) => there('pull', (rows) => readPulls(rows, ids, folder), byId),
    addFileWithPulls: (file, bytes, pulls, layout) =>
      addOriginal(connection, file, bytes, async (rows) => {
        const foreign = pulls.find(({ fileHash }) => fileHash !== file.hash);
        if (foreign) throw new Error(`pull ${foreign.id} does not come from the file ${file.hash}`);
        const [known] = await readFiles(rows, file.hash);
        if (known && !(await isWithdrawn(rows, 'file', file.hash))) throw alreadyThere(known);
        if (known) {
          // Taken back once, most likely for its columns: the same bytes are now understood as was confirmed this time.
          await deleteWithdrawn(rows, 'file', file.hash);
          await understandFileAs(rows, file.hash, file.mapping);
        } else await insertFile(rows, file);
        const { uid } = await log(rows, {
          act: 'file added',
          subject: `file ${file.hash}`,
          after: { name: file.name, mapping: file.mapping },
        });
        await addPulls(rows, pulls, uid);
        if (layout) await confirmLayout(rows, layout, { together: uid });
      }),
    addPulls: (pulls) => write((rows) => addPulls(rows, pulls)),
    amendPull: (id, amendment, reason, stamp) =>
      write(async (rows) => {
        const subject = `pull ${id}`;
        await refuseIfChanged(rows, subject, stamp);
        const [pull] = await readHeadsOf(rows, [id]);
        if (!pull) throw new Error(`there is no pull ${id} in the book`);
        const { sessionId } = amendment;
        const moved = sessionId !== undefined && sessionId !== pull.sessionId;
        const { before, after } = amendmentSides(pull, {
          ...(moved ? { orderInSession: await nextInSession(rows, sessionId) } : {}),
          ...amendment,
        });
        if (after.combinationId) await assertThere(rows, { combinationIds: [after.combinationId] });
        const amended = { ...pull, ...after };
        await updatePullHead(rows, amended);
        await log(rows, { act: 'pull amended', subject, reason, before, after });
        return amended;
      }),
    files: () =>
      there(
        'file',
        (rows) => readFiles(rows),
        ({ hash }) => hash,
      ),
    file: async (hash) =>
      (
        await there(
          'file',
          (rows) => readFiles(rows, hash),
          (one) => one.hash,
        )
      )[0] ?? null,
    original: (hash) => readOriginal(folder, hash),
    pullIdsOfFile: (hash) => read((rows) => readPullIdsOfFile(rows, hash)),

    trials: () => there('trial', (rows) => readTrials(rows), byId),
    trial: async (id) => (await there('trial', (rows) => readTrials(rows, [id]), byId))[0] ?? null,
    trialsOf: (ids) => there('trial', (rows) => readTrials(rows, ids), byId),
    trialNames: () => read(readTrialNames),
    trialIdsOfPulls: (pullIds) => read((rows) => readTrialIdsOfPulls(rows, pullIds)),
    addTrial: (trial) => add('trial', trial, insertTrial, trialRestsOn(trial)),
    changeTrial: (trial, reason, stamp) =>
      change(
        'trial',
        trial,
        { reason, stamp, restsOn: trialRestsOn(trial) },
        async (rows) => (await readTrials(rows, [trial.id]))[0],
        (rows) => replaceTrial(rows, trial),
      ),

    cells: () => there('cell', (rows) => readCells(rows), byId),
    addCell: (cell) => add('cell', cell, insertCell),
    changeCell: (cell, reason, stamp) =>
      change(
        'cell',
        cell,
        { reason, stamp },
        async (rows) => (await readCells(rows, cell.id))[0],
        (rows, before) => replaceCell(rows, before, cell),
      ),
    layouts: () => read((rows) => readLayouts(rows)),
    layout: (fingerprint) => read(async (rows) => (await readLayouts(rows, fingerprint))[0] ?? null),
    keepLayout: (layout) =>
      write(async (rows) => {
        await confirmLayout(rows, layout);
      }),
    forgetLayout: (fingerprint) =>
      write(async (rows) => {
        const [before] = await readLayouts(rows, fingerprint);
        if (!before) return;
        await deleteLayout(rows, fingerprint);
        await log(rows, {
          act: 'layout forgotten',
          subject: `layout ${fingerprint}`,
          before,
          after: null,
        });
      }),
    silenced: (subjects) => read(async (rows) => (await readSilenced(rows, subjects)).reverse()),
    silence: (silenced) =>
      write(async (rows) => {
        // The id follows from rule and subject, so that two books that silence the same say the same.
        const after = { id: `${silenced.ruleId} ${silenced.subject}`, ...silenced };
        const before = await readSilencedById(rows, after.id);
        await keepSilenced(rows, after);
        const { reason } = silenced;
        await log(rows, { act: 'rule silenced', subject: `silenced ${after.id}`, reason, before, after });
        return after;
      }),
    letSpeak: (id, reason) =>
      write(async (rows) => {
        const before = await readSilencedById(rows, id);
        if (!before) return;
        await deleteSilenced(rows, id);
        await log(rows, { act: 'rule let speak', subject: `silenced ${id}`, reason, before, after: null });
      }),
    predictions: async (trialIds) =>
      (await there('prediction', (rows) => readPredictions(rows, trialIds), byId)).reverse(),
    addPrediction: (prediction, ...others) =>
      write(async (rows) => {
        const { uid } = await insertLogged(rows, 'prediction', prediction, insertPrediction);
        for (const one of others)
          await insertLogged(rows, 'prediction', one, insertPrediction, { together: uid });
      }),
    publications: async (trialIds) =>
      (await there('publication', (rows) => readPublications(rows, trialIds), byId)).reverse(),
    addPublication: (publication) => add('publication', publication, insertPublication),
    changeLinks: (id, links, reason, stamp) =>
      write(async (rows) => {
        const subject = `publication ${id}`;
        await refuseIfChanged(rows, subject, stamp);
        const before = await readPublication(rows, id);
        if (!before) throw new Error(`there is no publication ${id} in the book`);
        await updateLinks(rows, id, links);
        const sides = { before: { links: before.links }, after: { links } };
        await log(rows, { act: 'publication changed', subject, reason, ...sides });
      }),
    enquiries: async (combinationIds) =>
      (await there('enquiry', (rows) => readEnquiries(rows, combinationIds), byId)).reverse(),
    enquiry: async (id) =>
      (
        await there(
          'enquiry',
          async (rows) => [await readEnquiry(rows, id)].filter((one) => one !== null),
          byId,
        )
      )[0] ?? null,
    enquiryNames: () => read(readEnquiryNames),
    addEnquiry: (enquiry) =>
      add('enquiry', enquiry, insertEnquiry, { combinationIds: [enquiry.combinationId] }),
    changeEnquiry: (id, change, reason, stamp) =>
      write(async (rows) => {
        await refuseIfChanged(rows, `enquiry ${id}`, stamp);
        await alterEnquiry(rows, id, change, { reason });
      }),
    addPlanned: ({ combination, trial, predictions, enquiryId, became }, stamp) =>
      write(async (rows) => {
        await refuseIfChanged(rows, `enquiry ${enquiryId}`, stamp);
        const own =
          combination === null
            ? {}
            : { engineIds: [combination.engineId], packageIds: combination.packageIds };
        await assertThere(rows, { ...own, ...trialRestsOn(trial) });
        const made =
          combination === null
            ? null
            : await insertLogged(rows, 'combination', combination, insertCombination);
        const added = await insertLogged(rows, 'trial', trial, insertTrial, stepOf(made));
        const together = (made ?? added).uid;
        for (const one of predictions)
          await insertLogged(rows, 'prediction', one, insertPrediction, { together });
        await alterEnquiry(rows, enquiryId, { became }, { reason: trial.question, together });
      }),
    settings: () => read(readSettings),
    changeSettings: (changed, stamp) =>
      write(async (rows) => {
        // One setting says nothing of another: a page may change two quickly, one after the other.
        const isAboutThese = ({ before, after }: LogEntry) =>
          Object.keys(changed).some((name) => Object.hasOwn(Object(after ?? before), name));
        await refuseIfChanged(rows, 'settings', stamp, isAboutThese);
        const all = await readSettings(rows);
        const before = Object.fromEntries(Object.keys(changed).map((name) => [name, all[name] ?? null]));
        await keepSettings(rows, changed);
        await log(rows, { act: 'settings changed', subject: 'settings', before, after: changed });
      }),

    named: (kind, given) => read((rows) => readNamed(rows, kind, given)),
    counts: () => read(readCounts),
    stamp: (subject) => read((rows) => readStamp(rows, subject)),
    logSince: (subject, stamp) => read((rows) => readLogSince(rows, subject, stamp)),
    log: () => read(readLog),
    subjects: (subjects) => read((rows) => readSubjectNames(rows, subjects)),
    logPage: (query) => read((rows) => readLogPage(rows, query)),
    undo: (uid) => write((rows) => undoStep(rows, uid, { folder, at: now() })),
    channels: (pullId) =>
      read(async (rows) => {
        const [pull] = await readPulls(rows, [pullId], folder);
        if (!pull) throw new Error(`there is no pull ${pullId} in the book`);
        return pull.channels;
      }),
    outline: () => read((rows) => readOutline(rows, connection)),
    contents: () => read((rows) => readContents(rows, connection)),
  };
}

function alreadyThere({ name, addedAt }: OriginalFile): BookTrouble {
  const message = `The file is in the book already, as "${name}", added ${addedAt}. Nothing was added; use the pulls it gave then.`;
  return new BookTrouble('exists', message);
}
