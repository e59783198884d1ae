import { type Remark, remark } from '@pullbook/core/remark';

const WORDS: Record<string, string> = {
  ENOSPC: 'There is no room left on the disk. Make room, or name a folder on another disk, then do it again',
  EDQUOT: 'There is no room left in the quota. Make room, then do it again',
  EFBIG: 'The file would be larger than the disk allows. Name a folder on another disk',
  EACCES: 'The folder may not be written to by this user. Change its permissions, or name another',
  EPERM: 'The folder may not be written to by this user. Change its permissions, or name another',
  EROFS: 'The disk is read-only. Name a folder on another',
  ENAMETOOLONG: 'The path is longer than the system takes. Name a folder with a shorter one',
  ENOENT: 'The folder went away meanwhile. Do it again',
  EIO: 'The disk did not take its bytes. Name a folder on another, and look after this one',
};

/** Trouble of the disk as a remark a person can act on; anything else is thrown on. */
export function diskRemark(trouble: unknown, path: string): Remark {
  const { code = '' } = trouble instanceof Error ? (trouble as NodeJS.ErrnoException) : {};
  const words = WORDS[code];
  if (words === undefined) throw trouble;
  return remark(
    'refusal',
    `disk-${code.toLowerCase()}`,
    `${path}: ${words}. Nothing half-written was left; what is in the book is untouched.`,
  );
}
