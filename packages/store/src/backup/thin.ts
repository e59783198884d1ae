import { readdir, rm, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { flushFolder } from '../originals.ts';
import { asBookTrouble } from '../trouble.ts';
import { type Backup, backupStem, backupsIn } from './model.ts';

const DAY_MS = 86_400_000;
/** All backups of so many days are kept. */
const EVERY_ONE_DAYS = 7;
/** Of each week before, back to so many weeks, the newest is kept; of each month before that, the newest. */
const WEEKS = 8;
/** A part that nobody has written to for this long has lost its writer, ms. */
const PART_IS_LOST_AFTER_MS = 3_600_000;

/**
 * Which of some backups, by their times, need not be kept any more: all of the last seven days stay, then the newest of
 * each week (from Monday, UTC) of the last eight weeks, then the newest of each month. The newest of all always stays, and
 * one whose time lies ahead or cannot be read.
 *
 * @example tooMany(['2026-03-02T08:00:00Z', '2026-03-03T08:00:00Z'], new Date('2026-03-20')) // the one of Monday
 */
export function tooMany(madeAt: readonly string[], now: Date): string[] {
  const newestFirst = [...madeAt].sort().reverse();
  const spans = new Set<string>();
  return newestFirst.filter((at) => {
    const made = Date.parse(at);
    const age = now.getTime() - made;
    if (Number.isNaN(made) || age <= EVERY_ONE_DAYS * DAY_MS) return false;
    const span = age <= WEEKS * 7 * DAY_MS ? `week ${weekOf(made)}` : `month ${at.slice(0, 7)}`;
    const isFirst = !spans.has(span);
    spans.add(span);
    return !isFirst;
  });
}

/** Weeks since the one of 1970-01-01, a Thursday. */
const weekOf = (time: number): number => Math.floor((time / DAY_MS + 3) / 7);

/**
 * Takes away the backups of a folder that need not be kept any more, and what a killed one left half written. Originals
 * always stay: every backup shares them. Gives what was taken away.
 */
export async function thinBackups(folder: string, now: Date): Promise<Backup[]> {
  const root = resolve(folder);
  try {
    const all = await backupsIn(root);
    const many = new Set(
      tooMany(
        all.map(({ madeAt }) => madeAt),
        now,
      ),
    );
    const away = all.filter(({ madeAt, database }) => many.has(madeAt) && isOwnName(database, madeAt));
    for (const { madeAt, database } of away) {
      // What says that it is there goes first: killed between, no backup is told that is not whole.
      await rm(join(root, `${backupStem(madeAt)}.json`), { force: true });
      await rm(join(root, database), { force: true });
    }
    await sweepParts(root, now);
    await flushFolder(root);
    return away;
  } catch (failure) {
    throw asBookTrouble(failure, root, 'backup folder');
  }
}

/** A name that came from somewhere else must not lead to another file. */
const isOwnName = (database: string, madeAt: string): boolean => database === `${backupStem(madeAt)}.sqlite`;

async function sweepParts(root: string, now: Date): Promise<void> {
  for (const name of await readdir(root)) {
    if (!/^book-.*\.part(-journal)?$/.test(name)) continue;
    const { mtimeMs } = await stat(join(root, name));
    if (now.getTime() - mtimeMs > PART_IS_LOST_AFTER_MS) await rm(join(root, name), { force: true });
  }
}
