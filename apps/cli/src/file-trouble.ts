import { Refusal } from './refusal.ts';

const WORDS: Record<string, string> = {
  ENOENT: 'there is no such file or folder. Check the path.',
  EACCES: 'it may not be opened by this user. Change its permissions, or name another place.',
  EPERM: 'it may not be changed by this user. Change its permissions, or name another place.',
  EISDIR: 'it is a folder. Name a file.',
  ELOOP: 'it is a link that leads back to itself. Name the file it should lead to.',
  ENAMETOOLONG: 'its name or path is longer than the system takes. Give it a shorter one.',
  ENXIO: 'it is a socket or a device, not a file. Name a file.',
  ENOTDIR: 'a part of the path is a file, not a folder. Check the path.',
  EIO: 'the disk or device did not give its bytes. Copy it to another disk, and look after this one.',
  EBUSY: 'another program holds it. Close it there, then do it again.',
  ENOSPC:
    'there is no room left on the disk. Make room, then do it again; what was stored before is untouched.',
  EDQUOT:
    'there is no room left in the quota. Make room, then do it again; what was stored before is untouched.',
  EFBIG: 'the file would be larger than the disk allows. What was stored before is untouched.',
  EROFS: 'the disk is read-only. Name another place.',
  EEXIST: 'something of this name is there already. Name another.',
};

/** Trouble of the file system in words; anything else comes back as it is. */
export function fileTrouble(trouble: unknown, path?: string): unknown {
  if (!(trouble instanceof Error)) return trouble;
  const { code = '', path: place = path } = trouble as NodeJS.ErrnoException;
  const words = WORDS[code];
  return words === undefined
    ? trouble
    : new Refusal(`file-${code.toLowerCase()}`, `${place ?? 'File'}: ${words}`);
}
