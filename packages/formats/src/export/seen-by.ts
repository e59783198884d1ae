import type { Audience } from '@pullbook/core/pull';
import type { ExportedBook } from './exported-book.ts';

/** For whom an export is made. `shop`: its own, everything. */
export type Reader = 'shop' | 'customer' | 'everyone';

/** How many of each kind an export does without. */
export interface LeftOut {
  pulls: number;
  trials: number;
  combinations: number;
  files: number;
}

/**
 * The book as someone outside the shop may have it on a day (ISO 8601 date): without pulls and trials that they may not
 * see yet or at all, without what only those rest on, without withdrawn things, and without the log, the settings and
 * the remembered layouts, which tell the shop's own doings. A trial goes whole or not at all: without one of its pulls
 * its answer would be another. A file of several pulls of which one is private stays out, and its other pulls say that
 * they have none. A compressor map goes with the combinations whose sheets name it: it is part of how they were built,
 * and what was computed of them rests on it.
 */
export function seenBy(
  book: ExportedBook,
  reader: Reader,
  day: string,
): { contents: ExportedBook; leftOut: LeftOut } {
  if (reader === 'shop')
    return { contents: book, leftOut: { pulls: 0, trials: 0, combinations: 0, files: 0 } };
  const gone = new Set(book.withdrawn.map(({ kind, id }) => `${kind} ${id}`));
  const open = (kind: string, { id, audience }: { id: string; audience: Audience }) =>
    !gone.has(`${kind} ${id}`) && maySee(audience, reader, day);
  const openPulls = book.pulls.filter((pull) => open('pull', pull));
  const pullIds = new Set(openPulls.map(({ id }) => id));
  const trials = book.trials.filter(
    (trial) => open('trial', trial) && trial.pulls.every(({ pullId }) => pullIds.has(pullId)),
  );
  const isShared = sharedFiles(book, pullIds);
  const files = book.files.filter(({ hash }) => isShared(hash));
  const pulls = openPulls.map((pull) =>
    pull.fileHash !== null && !isShared(pull.fileHash) ? { ...pull, fileHash: null } : pull,
  );
  const wanted = new Set([
    ...pulls.flatMap(({ combinationId }) => combinationId ?? []),
    ...trials.flatMap((trial) => trial.combinations.map(({ combinationId }) => combinationId)),
  ]);
  const combinations = book.combinations
    .filter(({ id }) => wanted.has(id))
    .map((one) =>
      one.madeFromId !== null && !wanted.has(one.madeFromId) ? { ...one, madeFromId: null } : one,
    );
  const used = <T>(list: readonly T[], of: (one: T) => string, names: (string | null)[]): T[] => {
    const known = new Set(names);
    return list.filter((one) => known.has(of(one)));
  };
  const byId = ({ id }: { id: string }) => id;
  const sessions = used(
    book.sessions,
    byId,
    pulls.map(({ sessionId }) => sessionId),
  );
  const named = (kind: string, list: readonly { id: string }[]) => list.map(({ id }) => `${kind} ${id}`);
  const goes = new Set([
    ...named('pull', pulls),
    ...named('trial', trials),
    ...named('combination', combinations),
    ...named('session', sessions),
  ]);
  const contents: ExportedBook = {
    ...book,
    engines: used(
      book.engines,
      byId,
      combinations.map(({ engineId }) => engineId),
    ),
    combinations,
    packages: used(
      book.packages,
      byId,
      combinations.flatMap(({ packageIds }) => packageIds),
    ),
    compressorMaps: used(
      book.compressorMaps.filter(({ id }) => !gone.has(`compressorMap ${id}`)),
      ({ name }) => plainName(name),
      combinations.map(({ sheet }) => plainName(sheet.sections.supercharger?.map?.text ?? '')),
    ),
    setUps: used(
      book.setUps,
      byId,
      pulls.map(({ setUpId }) => setUpId),
    ),
    sessions,
    pulls,
    files,
    trials,
    cells: used(book.cells, ({ name }) => name.toLowerCase(), [
      ...pulls.map(({ cell }) => cell?.toLowerCase() ?? null),
      ...sessions.map(({ cell }) => cell.toLowerCase()),
    ]),
    layouts: [],
    silenced: book.silenced.filter(({ subject }) => goes.has(subject)),
    predictions: book.predictions.filter(
      (one) => goes.has(`trial ${one.trialId}`) && !gone.has(`prediction ${one.id}`),
    ),
    settings: {},
    withdrawn: [],
    log: [],
  };
  const leftOut = {
    pulls: book.pulls.length - pulls.length,
    trials: book.trials.length - trials.length,
    combinations: book.combinations.length - combinations.length,
    files: book.files.length - files.length,
  };
  return { contents, leftOut };
}

/** As names are met in a book: capitals and spaces round them are forgiven. */
const plainName = (name: string): string => name.trim().toLowerCase();

function maySee({ who, notBefore }: Audience, reader: 'customer' | 'everyone', day: string): boolean {
  if (who === 'shop' || (who === 'customer' && reader === 'everyone')) return false;
  // An embargo is against publishing; the customer whose engine it is may have it before.
  return reader === 'customer' || notBefore === null || notBefore.slice(0, 10) <= day;
}

/** Files all of whose pulls are seen; one without pulls is not asked for by anything and stays in the shop. */
function sharedFiles(book: ExportedBook, pullIds: ReadonlySet<string>): (hash: string) => boolean {
  const seen = new Set<string>();
  const closed = new Set<string>();
  for (const { id, fileHash } of book.pulls) {
    if (fileHash !== null) (pullIds.has(id) ? seen : closed).add(fileHash);
  }
  return (hash) => seen.has(hash) && !closed.has(hash);
}
