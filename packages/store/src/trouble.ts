import { BookTrouble } from './model.ts';

type Place = 'book' | 'backup folder';

/** What a failure of SQLite or of the file system means to a person. */
type Code = BookTrouble['code'];

const MEANING: readonly { pattern: RegExp; code: Code }[] = [
  { pattern: /^SQLITE_(BUSY|LOCKED)/, code: 'locked' },
  // SQLite reports a quota or a limit of file size as a failed write.
  { pattern: /^(SQLITE_FULL|SQLITE_IOERR_(WRITE|FSYNC|TRUNCATE|SHMSIZE)|ENOSPC|EDQUOT|EFBIG)/, code: 'full' },
  { pattern: /^(SQLITE_READONLY|SQLITE_CANTOPEN|SQLITE_PERM|EACCES|EPERM|EROFS)/, code: 'read-only' },
  { pattern: /^SQLITE_(CORRUPT|NOTADB|FORMAT|IOERR)/, code: 'damaged' },
];

/**
 * The failure as a `BookTrouble` where a person can mend it, else as it came. To be thrown again by the caller.
 * `folder` names the book in the message, or what `place` says it is.
 */
export function asBookTrouble(failure: unknown, folder: string, place: Place = 'book'): unknown {
  if (failure instanceof BookTrouble || !(failure instanceof Error)) return failure;
  const name = 'code' in failure ? String(failure.code) : '';
  const code = MEANING.find(({ pattern }) => pattern.test(name))?.code;
  if (code === undefined) return failure;
  return Object.assign(new BookTrouble(code, message(code, `${place} ${folder}`, failure.message, folder)), {
    cause: failure,
  });
}

function message(code: Code, where: string, detail: string, folder: string): string {
  switch (code) {
    case 'locked':
      return `The ${where} is being written by another program. Nothing was changed. Wait until it has finished, or close it, and try again.`;
    case 'full':
      return `The disk of the ${where} took no more (${detail}): it is full, or a quota is reached. Nothing already stored was touched. Make room and try again.`;
    case 'read-only':
      return `The ${where} cannot be written (${detail}). Nothing was changed. Give yourself the right to write in the folder, ${where.startsWith('book') ? 'or copy the book to a folder where you have it' : 'or name another folder'}.`;
    default:
      return damagedMessage(folder, detail);
  }
}

/** For what is damaged: says where, and that the original files are still there. */
export function damagedMessage(folder: string, detail: string): string {
  return `The book ${folder} is damaged or not a book (${detail}). Nothing was changed, and the original files are in its folder "originals". Run "pullbook rescue --book ${folder}": it makes a sound book of all that can still be read, says what is lost, and keeps the damaged files beside it.`;
}
