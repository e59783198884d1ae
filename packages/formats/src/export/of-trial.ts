import { audienceOn, isOpen } from '@pullbook/core/pull';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { ExportedBook } from './exported-book.ts';
import { type Reader, seenBy } from './seen-by.ts';
import { whatGoes } from './what-goes.ts';

/** One trial out of a book. */
export interface OneTrial {
  contents: ExportedBook;
  question: string;
  /** Names of original files that stay: pulls that are not for this reader were read from them too. */
  originalsLeftOut: string[];
}

/**
 * The book narrowed to one trial with all that it rests on, rejected pulls and their reasons too, for `exportFiles`: another
 * book takes it in as a trial. Enquiries stay: their answers rest on pulls of other trials. Of the log it has only that things were added, so that they can be taken back there; amendments
 * with their reasons are the shop's own.
 *
 * @param reader `shop`: what is private goes too, because that was asked for
 * @param day ISO 8601 date, for embargoes
 */
export function ofTrial(book: ExportedBook, trialId: string, reader: Reader, day: string): Result<OneTrial> {
  const seen = seenBy(book, reader, day).contents;
  const withdrawn = new Set(book.withdrawn.map(({ kind, id }) => `${kind} ${id}`));
  const trial = seen.trials.find(({ id }) => id === trialId);
  if (!trial || withdrawn.has(`trial ${trialId}`)) return refused(notSeen(book, trialId, withdrawn));
  const named = new Set(trial.pulls.map(({ pullId }) => pullId));
  const closed = closedFiles(book, named, reader, day);
  const own = seen.pulls.filter(({ id }) => named.has(id));
  const hashes = new Set(own.flatMap(({ fileHash }) => fileHash ?? []));
  const files = seen.files.filter(({ hash }) => hashes.has(hash) && !closed.has(hash));
  const kept = new Set(files.map(({ hash }) => hash));
  const pulls = own.map((pull) =>
    pull.fileHash === null || kept.has(pull.fileHash) ? pull : { ...pull, fileHash: null },
  );
  const publications = seen.publications.filter(
    ({ id, trialId: of }) => of === trialId && !withdrawn.has(`publication ${id}`),
  );
  const contents = whatGoes(book, { pulls, trials: [trial], files, publications, enquiries: [] });
  const wanted = new Set(book.pulls.flatMap(({ id, fileHash }) => (named.has(id) ? (fileHash ?? []) : [])));
  const originalsLeftOut = book.files.filter(({ hash }) => wanted.has(hash) && !kept.has(hash));
  return accepted({
    contents: { ...contents, log: additionsOf(book, contents) },
    question: trial.question,
    originalsLeftOut: originalsLeftOut.map(({ name }) => name),
  });
}

/** Files from which pulls outside the trial were read that are not for everyone: their bytes would tell of those. */
function closedFiles(
  book: ExportedBook,
  named: ReadonlySet<string>,
  reader: Reader,
  day: string,
): ReadonlySet<string> {
  // Outside readers' files were looked at by `seenBy` already.
  if (reader !== 'shop') return new Set();
  const closed = book.pulls.filter(
    ({ id, audience }) => !named.has(id) && !isOpen(audienceOn(audience, day)),
  );
  return new Set(closed.flatMap(({ fileHash }) => fileHash ?? []));
}

function additionsOf(book: ExportedBook, contents: ExportedBook): ExportedBook['log'] {
  const lists: [kind: string, things: readonly { id: string }[]][] = [
    ['engine', contents.engines],
    ['package', contents.packages],
    ['combination', contents.combinations],
    ['compressorMap', contents.compressorMaps],
    ['set-up', contents.setUps],
    ['session', contents.sessions],
    ['cell', contents.cells],
    ['pull', contents.pulls],
    ['trial', contents.trials],
    ['prediction', contents.predictions],
    ['publication', contents.publications],
    ['file', contents.files.map(({ hash }) => ({ id: hash }))],
  ];
  const goes = new Set(lists.flatMap(([kind, things]) => things.map(({ id }) => `${kind} ${id}`)));
  return book.log.filter(({ act, subject }) => goes.has(subject) && /^[^:]+ added$/.test(act));
}

function notSeen(book: ExportedBook, trialId: string, withdrawn: ReadonlySet<string>) {
  const trial = book.trials.find(({ id }) => id === trialId);
  if (!trial || withdrawn.has(`trial ${trialId}`)) {
    const message = `There is no trial ${trialId} in the book. "pullbook list" shows the trials there are.`;
    return remark('refusal', 'no-trial', message);
  }
  const message = `"${trial.question}" is not for everyone, or has a pull that is not: it goes whole or not at all. Open it first, or ask for what is private too.`;
  return remark('refusal', 'not-for-everyone', message);
}
