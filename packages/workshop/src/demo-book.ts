import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { OPEN_AUDIENCE } from '@pullbook/core/pull';
import type { DemoPull, DemoScenario } from '@pullbook/demo';
import { readCombinationText } from '@pullbook/formats';
import { type Book, openBook } from '@pullbook/store';
import { publishAndMend } from './demo-publication.ts';
import type { PullDetails } from './edge/pull-details.ts';
import { importFile } from './import-file.ts';
import { inNewFolder } from './in-new-folder.ts';
import { writtenPull } from './written-pull.ts';

/**
 * Makes the demo book in a folder, by the same path that a tester's files take; one that is there already stays as it
 * is. Killed half way, nothing stands under the name and the next call starts again. With another seed it is another engine's
 * book, of the same story: for studies.
 */
export async function makeDemoBook(folder: string, seed?: number): Promise<void> {
  if (existsSync(join(folder, 'book.sqlite'))) return;
  const { demoScenario } = await import('@pullbook/demo');
  const scenario = demoScenario(seed);
  await inNewFolder(folder, async (temporary) => {
    const book = await openBook(temporary, { create: { name: scenario.bookName, invented: true } });
    try {
      await fill(book, scenario);
    } finally {
      await book.close();
    }
  });
}

async function fill(book: Book, scenario: DemoScenario): Promise<void> {
  const idOf = idsByReference();
  for (const { ref, ...engine } of scenario.engines) {
    await book.addEngine({ ...engine, id: idOf(ref), invented: true });
  }
  for (const { ref, ...item } of scenario.packages) {
    await book.addPackage({ ...item, id: idOf(ref), invented: true });
  }
  for (const { ref, ...map } of scenario.maps) await book.addCompressorMap({ ...map, id: idOf(ref) });
  for (const one of scenario.combinations) {
    const sheet = readCombinationText(one.sheetText, one.name);
    if (!sheet.ok) throw new Error(`Demo combination "${one.name}": ${sheet.remarks[0]?.message}`);
    await book.addCombination({
      id: idOf(one.ref),
      engineId: idOf(one.engineRef),
      name: one.name,
      sheet: sheet.value,
      revision: 1,
      madeFromId: one.madeFromRef === null ? null : idOf(one.madeFromRef),
      packageIds: one.packageRefs.map(idOf),
      createdAt: one.createdAt,
      invented: true,
    });
  }
  for (const { ref, instruments, ...cell } of scenario.cells) {
    const withIds = instruments.map(({ ref: own, ...one }) => ({ ...one, id: idOf(own) }));
    await book.addCell({ ...cell, id: idOf(ref), instruments: withIds });
  }
  for (const { ref, ...session } of scenario.sessions) await book.addSession({ ...session, id: idOf(ref) });
  for (const { ref, combinationRef, ...setUp } of scenario.setUps) {
    await book.addSetUp({ ...setUp, id: idOf(ref), combinationId: idOf(combinationRef) });
  }
  const pullIds = new Map<string, string>();
  for (const { name, bytes, pull } of scenario.files) {
    const miswritten = scenario.published.find((one) => one.miswritten.pullRef === pull.ref)?.miswritten;
    const weather = miswritten?.weather ?? pull.weather;
    const details = detailsOf({ ...pull, weather }, idOf);
    const imported = await importFile(book, { name, bytes, details });
    if (!imported.ok) throw new Error(`Demo file ${name}: ${imported.remarks[0]?.message}`);
    pullIds.set(pull.ref, imported.value.pulls[0]!.id);
  }
  for (const one of scenario.summaries) {
    const id = randomUUID();
    pullIds.set(one.ref, id);
    await book.addPulls([
      {
        ...writtenPull(
          { combinationId: idOf(one.combinationRef), notes: one.notes, invented: true },
          one.carried,
        ),
        id,
        name: one.name,
        form: 'summary',
        channels: [],
        summary: one.summary,
        origin: one.origin,
        fileHash: null,
      },
    ]);
  }
  const trials = scenario.trials.toSorted((a, b) => a.createdAt.localeCompare(b.createdAt));
  for (const { ref, combinations, pulls, ...trial } of trials) {
    await book.addTrial({
      ...trial,
      id: idOf(ref),
      combinations: combinations.map(({ key, combinationRef, shortName }) => ({
        key,
        combinationId: idOf(combinationRef),
        shortName,
      })),
      pulls: pulls.map(({ pullRef, ...one }) => ({ ...one, pullId: pullIds.get(pullRef)! })),
      audience: OPEN_AUDIENCE,
      invented: true,
    });
  }
  for (const one of scenario.published) {
    const { weather } = scenario.files.find(({ pull }) => pull.ref === one.miswritten.pullRef)!.pull;
    await publishAndMend(book, one, {
      id: idOf(one.ref),
      trialId: idOf(one.trialRef),
      pullId: pullIds.get(one.miswritten.pullRef)!,
      weather,
    });
  }
  for (const { ref, trialRef, ...prediction } of scenario.predictions) {
    await book.addPrediction({ ...prediction, id: idOf(ref), trialId: idOf(trialRef) });
  }
  for (const { pullRef, ...rule } of scenario.silenced) {
    await book.silence({ ...rule, subject: `pull ${pullIds.get(pullRef)!}` });
  }
}

function detailsOf(pull: DemoPull, idOf: (ref: string) => string): PullDetails {
  const { ref: _, combinationRef, setUpRef, sessionRef, momentOfInertia, ...rest } = pull;
  return {
    ...rest,
    combinationId: idOf(combinationRef),
    setUpId: idOf(setUpRef),
    sessionId: idOf(sessionRef),
    carried: { standard: 'observed', factor: 1 },
    sweep: { momentOfInertia, inertiaCompensated: 'no' },
    invented: true,
  };
}

/** A new id for each reference, the same one each time it is asked for. */
function idsByReference(): (ref: string) => string {
  const ids = new Map<string, string>();
  return (ref) => {
    const id = ids.get(ref) ?? randomUUID();
    ids.set(ref, id);
    return id;
  };
}
