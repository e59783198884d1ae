import type { ExportedBook } from './exported-book.ts';

/** Which pulls, trials, files, publications and enquiries of a book go, as they go. */
export type Chosen = Pick<ExportedBook, 'pulls' | 'trials' | 'files' | 'publications' | 'enquiries'>;

/**
 * The book with these and all that they rest on: combinations, engines, packages, compressor maps, set-ups, sessions, cells,
 * and what was silenced or predicted of them. Without withdrawn things, and without the log, the settings and the remembered
 * layouts, which tell the shop's own doings. A compressor map goes with the combinations whose sheets name it: it is part of
 * how they were built, and what was computed of them rests on it.
 */
export function whatGoes(
  book: ExportedBook,
  { pulls, trials, files, publications, enquiries }: Chosen,
): ExportedBook {
  const gone = new Set(book.withdrawn.map(({ kind, id }) => `${kind} ${id}`));
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
  return {
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
    publications,
    enquiries: enquiries
      .filter(({ combinationId }) => wanted.has(combinationId))
      .map((one) => ({ ...one, became: one.became.filter(({ trialId }) => goes.has(`trial ${trialId}`)) })),
    settings: {},
    withdrawn: [],
    log: [],
  };
}

/** As names are met in a book: capitals and spaces round them are forgiven. */
const plainName = (name: string): string => name.trim().toLowerCase();
