import { randomUUID } from 'node:crypto';
import { createReadStream, createWriteStream, existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rm, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ShownRemark, ViewOptions } from '@pullbook/views';
import {
  answerToPublish,
  type Book,
  type PublishRequest,
  publishTrial,
  shownRemarks,
  sweepParts,
  zipOf,
} from '@pullbook/workshop';
import { RequestTrouble, valueOrTrouble } from './trouble.ts';

/** Something that is being made for a page: where it is, and what came of it. */
export interface PublishJob {
  id: string;
  trialId: string;
  kinds: PublishRequest['kinds'];
  state: 'making' | 'done' | 'cancelled' | 'failed';
  /** What is being made just now, and how far it is, 0 to 1. */
  what: string;
  share: number;
  /** The one file, or a zip of several; `null`: not there yet, or none. */
  file: { name: string; bytes: number } | null;
  /** The file was fetched; it can be again as long as it lies here. */
  isFetched: boolean;
  publicationId: string | null;
  remarks: ShownRemark[];
}

interface Held {
  job: PublishJob;
  abort: AbortController;
  folder: string;
  path: string | null;
  ended: Promise<void>;
}

/** Finished jobs whose file still lies here, so that a download can be tried again. */
const KEPT = 4;

/** What is being made for pages, and its files until they are fetched; beside the book, swept when the server starts and ends. */
export class Publishing {
  private readonly held = new Map<string, Held>();
  private readonly book: Book;
  private readonly folder: string;

  private constructor(book: Book, all: string) {
    this.book = book;
    this.folder = join(all, String(process.pid));
  }

  /** Ready to begin, what a killed server left being swept. */
  static async over(book: Book): Promise<Publishing> {
    const all = join(book.folder, 'outgoing');
    if (existsSync(all)) await sweepParts(all, '', { ownToo: true });
    return new Publishing(book, all);
  }

  /** Begins; what stands in its way from the first is thrown at once, the rest is told by the job. */
  async start(trialId: string, view: ViewOptions, request: PublishRequest): Promise<PublishJob> {
    valueOrTrouble(await answerToPublish(this.book, trialId, request, request.kinds));
    await this.letGoOfOld();
    const id = randomUUID();
    const folder = join(this.folder, id);
    await mkdir(folder, { recursive: true }).catch((trouble: NodeJS.ErrnoException) => {
      const message = `The folder of the book takes no file to hand over (${trouble.code}). Make room or make it writable, then do it again.`;
      throw new RequestTrouble(507, 'full', message);
    });
    const abort = new AbortController();
    const job: PublishJob = {
      id,
      trialId,
      kinds: request.kinds,
      state: 'making',
      what: '',
      share: 0,
      file: null,
      isFetched: false,
      publicationId: null,
      remarks: [],
    };
    const held: Held = { job, abort, folder, path: null, ended: Promise.resolve() };
    this.held.set(id, held);
    held.ended = this.make(held, trialId, view, request);
    return job;
  }

  find(id: string): PublishJob {
    return this.heldOf(id).job;
  }

  /** Of one trial, what a page that was left or loaded again has not heard the end of; the last begun first. */
  open(trialId: string): PublishJob[] {
    return [...this.held.values()]
      .map(({ job }) => job)
      .filter((job) => job.trialId === trialId && job.state !== 'cancelled' && !job.isFetched)
      .reverse();
  }

  /** The file, to be sent; refused where it is not there. */
  file(id: string): { name: string; stream: Readable; bytes: number } {
    const { job, path } = this.heldOf(id);
    if (job.file === null || path === null) {
      const message = 'There is no file to fetch: it is still being made, was cancelled, or failed.';
      throw new RequestTrouble(409, 'no-file-yet', message);
    }
    job.isFetched = true;
    return { ...job.file, stream: createReadStream(path) };
  }

  /** Cancels what is under way; what has ended is put away with its file. */
  async stop(id: string): Promise<PublishJob> {
    const held = this.heldOf(id);
    if (held.job.state !== 'making') this.held.delete(id);
    held.abort.abort();
    await held.ended;
    await rm(held.folder, { recursive: true, force: true });
    held.path = null;
    held.job.file = null;
    return held.job;
  }

  /** Ends everything, and leaves no file. */
  async close(): Promise<void> {
    for (const { abort } of this.held.values()) abort.abort();
    await Promise.all([...this.held.values()].map(({ ended }) => ended));
    await rm(this.folder, { recursive: true, force: true });
  }

  private async make(held: Held, trialId: string, view: ViewOptions, request: PublishRequest): Promise<void> {
    const { job, abort, folder } = held;
    const out = join(folder, 'files');
    try {
      const made = valueOrTrouble(
        await publishTrial(this.book, trialId, view, request, {
          folder: out,
          signal: abort.signal,
          onProgress: (what, share) => Object.assign(job, { what, share }),
        }),
      );
      job.remarks = shownRemarks(made.remarks, view);
      job.publicationId = made.publicationId;
      if (made.state === 'done') {
        held.path = await oneFile(
          out,
          folder,
          made.files.map(({ path }) => path),
        );
        job.file = { name: basename(held.path), bytes: (await stat(held.path)).size };
        job.share = 1;
      }
      job.state = made.state === 'stopped' ? 'failed' : made.state;
    } catch (trouble) {
      job.state = abort.signal.aborted ? 'cancelled' : 'failed';
      job.remarks = [...job.remarks, ...wordsOfTrouble(trouble, view)];
    }
  }

  private heldOf(id: string): Held {
    const held = this.held.get(id);
    if (held) return held;
    throw new RequestTrouble(404, 'unknown-id', 'This is no longer being made here. Publish once more.');
  }

  private async letGoOfOld(): Promise<void> {
    const ended = [...this.held.values()].filter(({ job }) => job.state !== 'making');
    for (const { job, folder } of ended.slice(0, Math.max(0, ended.length - KEPT + 1))) {
      this.held.delete(job.id);
      await rm(folder, { recursive: true, force: true });
    }
  }
}

/** One file is handed over as it is; several, or a folder of pictures, as one zip. */
async function oneFile(out: string, folder: string, paths: readonly string[]): Promise<string> {
  const [only] = paths;
  if (only === undefined)
    throw new RequestTrouble(400, 'nothing-made', 'Nothing of what was asked for could be made.');
  if (paths.length === 1 && (await stat(only)).isFile()) return only;
  const name = basename(only).replace(/\.[a-z0-9]+$/u, '');
  const zip = join(
    folder,
    `${paths.length === 1 ? name : commonStem(paths.map((path) => basename(path)))}.zip`,
  );
  await pipeline(Readable.from(zipOf(filesUnder(out))), createWriteStream(zip, { flags: 'wx' }));
  await rm(out, { recursive: true });
  return zip;
}

async function* filesUnder(folder: string, under = ''): AsyncGenerator<{ path: string; bytes: Uint8Array }> {
  const entries = await readdir(join(folder, under), { withFileTypes: true });
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const path = under === '' ? entry.name : `${under}/${entry.name}`;
    if (entry.isDirectory()) yield* filesUnder(folder, path);
    else yield { path, bytes: await readFile(join(folder, path)) };
  }
}

/** What the names begin with alike, up to a whole word. */
function commonStem(names: readonly string[]): string {
  const parts = names.map((name) => name.replace(/\.[a-z0-9]+$/u, '').split('-'));
  const alike = parts[0]!.findIndex((part, at) => parts.some((other) => other[at] !== part));
  const stem = parts[0]!.slice(0, alike < 0 ? undefined : alike).join('-');
  return stem === '' ? 'published' : stem;
}

function wordsOfTrouble(trouble: unknown, view: ViewOptions): ShownRemark[] {
  if (trouble instanceof RequestTrouble && trouble.remarks.length > 0)
    return shownRemarks(trouble.remarks, view);
  return [{ level: 'refusal', text: trouble instanceof Error ? trouble.message : String(trouble) }];
}
