import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import type { Silenced } from '@pullbook/core/rule';
import { checkBackup } from '../backup/check.ts';
import { backupsIn } from '../backup/model.ts';
import type { Book, LogEntry } from '../model.ts';

/** What an importer said was done besides bringing in files. */
export interface SaidEdits {
  /** Reasons of amendments, changes, silencings. */
  done: string[];
  /** Values of settings. */
  set: string[];
  /** What predictions rest on. */
  predicted: string[];
  /** Sentences of publications. */
  published: string[];
  /** Questions of enquiries, and of those whose rung became a trial. */
  asked: string[];
  planned: string[];
  /** `uid` of entries that undo one. */
  undone: string[];
  /** When backups were made. */
  backedUp: string[];
}

/** The edits among the whole lines that an importer printed. */
export function saidEdits(lines: readonly string[]): SaidEdits {
  const after = (start: string) =>
    lines.flatMap((line) => (line.startsWith(start) ? [line.slice(start.length)] : []));
  return {
    done: after('done '),
    set: after('set '),
    predicted: after('predicted '),
    published: after('published '),
    asked: after('asked '),
    planned: after('planned '),
    undone: after('undone '),
    backedUp: after('backed up '),
  };
}

/**
 * What is wrong after a kill: an edit that was said and is not in the log; a state that is not the one that the last entry
 * about it left; a backup that was said and is not there whole, or one that is there and is not whole.
 */
export async function faultsOfEdits(book: Book, said: SaidEdits, backups: string): Promise<string[]> {
  const log = await book.log();
  const reasons = new Set(log.map(({ reason }) => reason));
  const uids = new Set(log.map(({ uid }) => uid));
  const bases = new Set((await book.predictions()).map(({ basis }) => basis));
  const sentences = new Set((await book.publications()).map(({ sentence }) => sentence));
  const enquiries = new Map((await book.enquiries()).map((one) => [one.question, one]));
  const settings = new Set(
    log.flatMap(({ act, after }) => (act === 'settings changed' ? Object.values(after as object) : [])),
  );
  return [
    ...said.done.filter((one) => !reasons.has(one)).map((one) => `"${one}" was done and is lost`),
    ...said.set.filter((one) => !settings.has(one)).map((one) => `the setting ${one} was kept and is lost`),
    ...said.predicted
      .filter((one) => !bases.has(one))
      .map((one) => `the prediction ${one} was kept and is lost`),
    ...said.published
      .filter((one) => !sentences.has(one))
      .map((one) => `the publication ${one} was noted and is lost`),
    ...said.asked
      .filter((one) => !enquiries.has(one))
      .map((one) => `the enquiry ${one} was kept and is lost`),
    ...said.planned
      .filter((one) => enquiries.get(one)?.became.length !== 1)
      .map((one) => `what became of the enquiry ${one} was noted and is lost`),
    ...(await plansThatAreHalf(book)),
    ...said.undone.filter((one) => !uids.has(one)).map((one) => `${one} was an undoing and is lost`),
    ...(await statesThatDiffer(book, log)),
    ...(await silencedThatDiffer(book, log)),
    ...(await faultsOfBackups(backups, said.backedUp)),
  ];
}

/** A rung becomes a combination, a trial, a prediction and a line of its enquiry: all of them, or none. */
async function plansThatAreHalf(book: Book): Promise<string[]> {
  const { combinations, trials, predictions, enquiries } = await book.outline();
  const became = enquiries.flatMap((one) => one.became);
  const made = combinations.filter(({ id }) => id.startsWith('made '));
  const isWhole = ({ combinationId, trialId }: (typeof became)[number]) =>
    made.some(({ id }) => id === combinationId) &&
    trials.some(({ id }) => id === trialId) &&
    predictions.some((one) => one.trialId === trialId);
  return [
    ...became.filter((one) => !isWhole(one)).map(({ rungId }) => `half of the plan ${rungId} is lost`),
    ...made
      .filter(({ id }) => !became.some(({ combinationId }) => combinationId === id))
      .map(({ id }) => `${id} is there and its enquiry does not know it`),
  ];
}

async function statesThatDiffer(book: Book, log: readonly LogEntry[]): Promise<string[]> {
  const { pulls, trials, settings, predictions, compressorMaps, publications } = await book.outline();
  const last = new Map<string, Record<string, unknown>>();
  for (const { subject, after } of log)
    if (after !== null) last.set(subject, { ...last.get(subject), ...(after as Record<string, unknown>) });
  const differs = (subject: string, field: string, is: unknown) => {
    const wanted = last.get(subject)?.[field];
    return wanted === undefined || wanted === is
      ? []
      : [`${subject}: ${field} is ${is}, the log says ${wanted}`];
  };
  return [
    ...pulls.flatMap(({ id, operator }) => differs(`pull ${id}`, 'operator', operator)),
    ...trials.flatMap(({ id, remark, plan, runningOrder }) => [
      ...differs(`trial ${id}`, 'remark', remark),
      // The plan is changed with the remark: both, or none.
      ...(remark === (plan?.notes ?? '')
        ? []
        : [`trial ${id}: its plan is ${plan?.notes}, its remark ${remark}`]),
      ...(remark === (runningOrder?.steps[0]?.title ?? '')
        ? []
        : [`trial ${id}: its running order is ${runningOrder?.steps[0]?.title}, its remark ${remark}`]),
    ]),
    ...compressorMaps.flatMap(({ id, name, notes }) => [
      ...differs(`compressorMap ${id}`, 'notes', notes),
      ...(name === notes ? [] : [`compressorMap ${id}: its name is ${name}, its notes ${notes}`]),
    ]),
    ...predictions.flatMap(({ id, basis }) => differs(`prediction ${id}`, 'basis', basis)),
    ...publications.flatMap(({ id, links }) => {
      const wanted = last.get(`publication ${id}`)?.links ?? [];
      return isDeepStrictEqual(links, wanted)
        ? []
        : [
            `publication ${id}: its links are ${JSON.stringify(links)}, the log says ${JSON.stringify(wanted)}`,
          ];
    }),
    ...[...last.keys()]
      .filter(
        (one) => one.startsWith('prediction ') && !predictions.some(({ id }) => one === `prediction ${id}`),
      )
      .map((one) => `${one} is in the log and nowhere else`),
    ...Object.entries(settings).flatMap(([name, value]) => differs('settings', name, value)),
  ];
}

/** What is silenced is what the last entry about it says: a reason, or nothing where it was let speak. */
async function silencedThatDiffer(book: Book, log: readonly LogEntry[]): Promise<string[]> {
  const reasons = new Map<string, string>();
  for (const { subject, after } of log) {
    if (!subject.startsWith('silenced ')) continue;
    if (after === null) reasons.delete(subject);
    else reasons.set(subject, (after as Silenced).reason);
  }
  const is = new Map((await book.silenced()).map(({ id, reason }) => [`silenced ${id}`, reason]));
  return [...new Set([...reasons.keys(), ...is.keys()])]
    .filter((subject) => reasons.get(subject) !== is.get(subject))
    .map((subject) => `${subject}: "${is.get(subject)}", the log says "${reasons.get(subject)}"`);
}

async function faultsOfBackups(folder: string, said: readonly string[]): Promise<string[]> {
  const all = await backupsIn(folder);
  const made = new Set(all.map(({ madeAt }) => madeAt));
  const [newest] = all;
  return [
    ...said.filter((one) => !made.has(one)).map((one) => `the backup of ${one} was made and is lost`),
    ...all
      .filter(({ database }) => !existsSync(join(folder, database)))
      .map(({ madeAt }) => `the backup of ${madeAt} has no database`),
    ...(newest && said.length > 0 ? (await checkBackup(folder, newest.madeAt)).faults : []),
  ];
}
