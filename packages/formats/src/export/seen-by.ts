import type { Audience } from '@pullbook/core/pull';
import type { ExportedBook } from './exported-book.ts';
import { whatGoes } from './what-goes.ts';

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
 * see yet or at all, and without what only those rest on (`whatGoes`). A trial goes whole or not at all: without one of its
 * pulls its answer would be another. A file of several pulls of which one is private stays out, and its other pulls say that
 * they have none. A publication goes with its trial, but not where a pull that it rests on stays in the shop; one that held
 * what is not for everyone goes to the customer alone. An enquiry goes with the combination it was asked of, but not where it
 * rests on a pull that stays, or shows one among the nearest.
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
  const trialIds = new Set(trials.map(({ id }) => id));
  const publications = book.publications.filter(
    (one) =>
      trialIds.has(one.trialId) &&
      !gone.has(`publication ${one.id}`) &&
      one.pullIds.every((id) => pullIds.has(id)) &&
      (reader === 'customer' || !one.privateToo),
  );
  const enquiries = book.enquiries.filter(
    ({ id, pullIds: restsOn, answer }) =>
      !gone.has(`enquiry ${id}`) &&
      [...restsOn, ...answer.near.flatMap((one) => one.pullIds)].every((one) => pullIds.has(one)),
  );
  const contents = whatGoes(book, { pulls, trials, files, publications, enquiries });
  const leftOut = {
    pulls: book.pulls.length - pulls.length,
    trials: book.trials.length - trials.length,
    combinations: book.combinations.length - contents.combinations.length,
    files: book.files.length - files.length,
  };
  return { contents, leftOut };
}

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
