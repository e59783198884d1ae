import type { Rows } from '../connection.ts';
import { BookTrouble, type LogEntry } from '../model.ts';
import { isUndone, logAct, readLogSince, readTogether } from '../rows/log.ts';
import { type Acting, type Reversal, reversalOf } from './reversal-of.ts';

const UNDONE = 'undone: ';
const AGAIN = 'done again: ';

/** The act itself, without how often it was undone: `undone: pull added` is `pull added`. */
export const plainAct = (act: string): string => act.replace(/^(undone|done again): /, '');

/** Undoes the step of that entry, or the last that can be, in the transaction given; gives the entries of the undoing. */
export async function undoStep(rows: Rows, uid: string | null, acting: Acting): Promise<LogEntry[]> {
  const step = uid === null ? await lastStep(rows) : await readTogether(rows, uid);
  if (step.length === 0) {
    const message =
      uid === null
        ? 'There is nothing to undo: every act in the log that can be undone is undone already.'
        : `The log has no entry ${uid}. Give one of "pullbook history".`;
    throw new BookTrouble('cannot be undone', message);
  }
  const undone: LogEntry[] = [];
  // Backwards: what was added last rests on what was added before it.
  for (const entry of step.toReversed()) {
    const reversal = reversalOf(plainAct(entry.act));
    if (reversal === null) {
      if (step.length === 1) throw new BookTrouble('cannot be undone', cannotBe(entry));
      continue;
    }
    if (await isUndone(rows, entry.uid)) {
      throw new BookTrouble(
        'cannot be undone',
        `"${entry.act}" of ${entry.at} is undone already. Undo the undoing to have it back.`,
      );
    }
    const isBeside = plainAct(entry.act) === BESIDE && step.length > 1;
    const reversed = await reverse(rows, entry, reversal, acting, { together: undone[0]?.uid, isBeside });
    if (reversed !== null) undone.push(reversed);
  }
  return undone;
}

async function reverse(
  rows: Rows,
  entry: LogEntry,
  reversal: Reversal,
  acting: Acting,
  { together, isBeside }: { together: string | undefined; isBeside: boolean },
): Promise<LogEntry | null> {
  const standsInTheWay = await reversal(rows, entry, acting, entry.act.startsWith(UNDONE));
  // Columns confirmed anew since are somebody's last word: a file is taken back without them.
  if (standsInTheWay === 'changed' && isBeside) return null;
  if (standsInTheWay !== null) {
    const since = standsInTheWay === 'changed' ? await effectiveSince(rows, entry) : [];
    throw standsInTheWay === 'changed'
      ? new BookTrouble('changed meanwhile', changedSince(entry, since), since)
      : standsInTheWay;
  }
  return logAct(rows, {
    act: (entry.act.startsWith(UNDONE) ? AGAIN : UNDONE) + plainAct(entry.act),
    subject: entry.subject,
    reason: entry.reason,
    before: entry.after,
    after: entry.before,
    undoes: entry.uid,
    at: acting.at,
    ...(together === undefined ? {} : { together }),
  });
}

/** What is done beside a person's act and is never meant by "the last": that is undone by its own name only. */
const BESIDE = 'layout confirmed';

/** The last step that is no undoing, is not undone, and can be. */
async function lastStep(rows: Rows): Promise<LogEntry[]> {
  let before = Number.MAX_SAFE_INTEGER;
  for (;;) {
    const found = await rows
      .selectFrom('log')
      .select(['id', 'uid', 'act', 'undoes'])
      .where('id', '<', before)
      .orderBy('id', 'desc')
      .limit(50)
      .execute();
    for (const { uid, act, undoes } of found) {
      const isMeant = undoes === null && act !== BESIDE && reversalOf(act) !== null;
      if (!isMeant || (await isUndone(rows, uid))) continue;
      return readTogether(rows, uid);
    }
    const last = found.at(-1);
    if (!last) return [];
    before = last.id;
  }
}

/** Entries about the same that came later and are in force: no undoing, and not undone. */
async function effectiveSince(rows: Rows, entry: LogEntry): Promise<LogEntry[]> {
  const later = await readLogSince(rows, entry.subject, entry.uid);
  const inForce: LogEntry[] = [];
  for (const one of later) if (!(await isUndone(rows, one.uid))) inForce.push(one);
  return inForce;
}

function changedSince(entry: LogEntry, since: readonly LogEntry[]): string {
  const later = since.at(-1);
  const what = later
    ? `"${later.act}" of ${later.at}${later.reason === '' ? '' : ` (${later.reason})`} came after it and stands in the way. Undo that first (${later.uid}).`
    : 'what it changed is no longer as it left it. Amend it by hand instead.';
  return `"${entry.act}" of ${entry.at} cannot be undone now: ${what}`;
}

const cannotBe = (entry: LogEntry): string =>
  `"${entry.act}" cannot be undone: nothing is hidden or altered by it. Undo what was done with it instead.`;
