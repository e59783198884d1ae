import { mkdir, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { Publication } from '@pullbook/core/publication';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { publishedNumbers } from '../edge/published-numbers.ts';
import { signatureOf } from '../signature.ts';
import { answerToPublish } from './answer-to-publish.ts';
import { diskRemark } from './disk-words.ts';
import { publishedStem } from './file-names.ts';
import type { PublishedFile, PublishReport, PublishRequest } from './model.ts';
import { notePublication } from './note-publication.ts';
import { withPartFolder } from './part-folder.ts';
import type { Making } from './piece.ts';
import { piecesOf } from './pieces.ts';
import { putInPlace } from './put-in-place.ts';

/** Where the files go, and how one watches them being made. */
export interface PublishTo {
  /** Made where it is missing. */
  folder: string;
  signal?: AbortSignal | undefined;
  onProgress?: ((what: string, share: number) => void) | undefined;
}

type FileOfPublication = Publication['files'][number];

/**
 * Makes everything asked for of a trial, each file whole or not at all, and notes one publication of what was made, with its
 * figures and the pulls they rest on; a draft is not noted. Cancelled, or out of room, what is whole stays and is listed.
 */
export async function publishTrial(
  book: Book,
  trialId: string,
  options: ViewOptions,
  request: PublishRequest,
  { folder, signal, onProgress }: PublishTo,
): Promise<Result<PublishReport>> {
  const found = await answerToPublish(book, trialId, request, request.kinds);
  if (!found.ok) return found;
  const answer = found.value;
  const out = resolve(folder);
  const there = await folderAt(out);
  if (!there.ok) return there;
  const making: Making = {
    book,
    answer,
    options,
    signature: await signatureOf(book),
    request,
    numbers: publishedNumbers(answer),
    stem: publishedStem(answer.trial.question, answer.trial.id),
    signal,
    onProgress,
  };
  const made = await makeAll(making, out);
  const noted = await note(making, made);
  return accepted({
    files: made.files,
    publicationId: noted.id,
    state: made.state,
    remarks: [...made.remarks, ...noted.remarks],
  });
}

interface Made {
  files: PublishedFile[];
  noted: FileOfPublication[];
  state: PublishReport['state'];
  remarks: Remark[];
}

async function makeAll(making: Making, out: string): Promise<Made> {
  const { book, signal } = making;
  const known = new Set(
    (await book.publications([making.answer.trial.id])).flatMap(({ files }) =>
      files.map(({ sha256 }) => sha256),
    ),
  );
  const made: Made = { files: [], noted: [], state: 'done', remarks: [] };
  let path = out;
  const stop = (trouble: Remark): Made => ({
    ...made,
    state: 'stopped',
    remarks: [...made.remarks, trouble],
  });
  try {
    return await withPartFolder(out, async (part) => {
      for await (const piece of piecesOf(making, made.remarks)) {
        // Drawing holds the thread; between two files whoever wants to stop it is heard.
        await new Promise((next) => setImmediate(next));
        signal?.throwIfAborted();
        path = join(out, piece.name);
        const result = await piece.make(join(part, piece.name));
        signal?.throwIfAborted();
        if ('trouble' in result) return stop(result.trouble);
        const { remarks = [], ...size } = result;
        const placed = await putInPlace(join(part, piece.name), out, known);
        known.add(placed.sha256);
        made.remarks.push(...remarks, ...placed.remarks);
        made.files.push({ path: placed.path, kind: piece.kind, ...size, bytes: placed.bytes });
        const { bytes, sha256 } = placed;
        made.noted.push({ name: basename(placed.path), kind: piece.kind, bytes, sha256 });
      }
      // What was asked for by name and is not there was told; all of it missing is not done.
      return made.files.length === 0 ? { ...made, state: 'stopped' as const } : made;
    });
  } catch (trouble) {
    if (signal?.aborted) return { ...made, state: 'cancelled', remarks: [...made.remarks, CANCELLED] };
    return stop(diskRemark(trouble, path));
  }
}

async function note(
  { book, answer, options, request }: Making,
  { noted }: Made,
): Promise<{ id: string | null; remarks: Remark[] }> {
  if (request.draft || noted.length === 0) return { id: null, remarks: [] };
  const publication = await notePublication(book, answer, options, {
    files: noted,
    privateToo: request.privateToo,
    isWindowed: request.averagesWindowRpm !== undefined,
  });
  return { id: publication.id, remarks: publication.remarks };
}

/** The folder of files to be, made where it is missing. */
export async function folderAt(out: string): Promise<Result<null>> {
  try {
    await mkdir(out, { recursive: true });
    if ((await stat(out)).isDirectory()) return accepted(null);
  } catch (trouble) {
    const { code } = trouble as NodeJS.ErrnoException;
    if (code !== 'EEXIST' && code !== 'ENOTDIR')
      return refused(diskRemark(await ownTrouble(trouble, out), out));
  }
  const message = `${out} is a file, or lies in one, and the files need a folder. Name a folder with --out; it is made where it is missing.`;
  return refused(remark('refusal', 'not-a-folder', message));
}

/** Making several folders at once tells of a disk that may not be written to as of one that is not there; making one tells it. */
async function ownTrouble(trouble: unknown, out: string): Promise<unknown> {
  if ((trouble as NodeJS.ErrnoException).code !== 'ENOENT') return trouble;
  const above = dirname(out);
  const isThere = await stat(above).then(
    () => true,
    () => false,
  );
  if (!isThere && above !== out) return ownTrouble(trouble, above);
  return mkdir(out).then(
    () => trouble,
    (own: unknown) => own,
  );
}

const CANCELLED = remark(
  'refusal',
  'cancelled',
  'Cancelled. What was whole by then stays; nothing half-written was left.',
);
