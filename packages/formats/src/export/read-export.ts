import type { Channel } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { type BookJson, bookFromJson } from './book-json.ts';
import { type EdgePull, pullFromEdge } from './edge-book.ts';
import type { ExportedBook } from './exported-book.ts';
import { parseBook } from './parse-book.ts';
import { valuesFromCsv } from './pull-to-csv.ts';

/** Bytes of a file of the export by its path; `null`: it is not there. */
export type ReadExportFile = (path: string) => Promise<Uint8Array | null>;

/** An export that was opened: what is large is read as it is asked for. */
export interface OpenExport {
  contents: ExportedBook;
  channelsOf: (pullId: string) => Promise<Result<Channel[]>>;
  originalOf: (hash: string) => Promise<Result<Uint8Array>>;
  /** Reads every file once: all that is missing or does not fit what `book.json` says of it, naming the file. */
  faults: () => Promise<Remark[]>;
}

/**
 * Opens an export. Files that the export does not name are passed over. Refused, naming the file: no `book.json`,
 * another format or a newer one.
 */
export async function openExport(read: ReadExportFile): Promise<Result<OpenExport>> {
  const parsed = parseBook(await read('book.json'));
  if (!parsed.ok) return parsed;
  const json = parsed.value;
  const edges = new Map(json.pulls.map((edge) => [edge.id, edge]));
  const pulls = json.pulls.map((edge) => {
    const { channels: _, ...head } = pullFromEdge(edge, []);
    return head;
  });
  const contents = bookFromJson(json, pulls);
  const channelsOf = (pullId: string) => readChannels(edges.get(pullId), read);
  const files = new Map(json.files.map((file) => [file.hash, file]));
  const paths = new Map(json.originals.map(({ hash, path }) => [hash, path]));
  const originalOf = (hash: string) => readOriginal(files.get(hash), paths.get(hash), read);
  const faults = async () => {
    const found: Remark[] = [];
    for (const { hash } of json.files) found.push(...refusals(await originalOf(hash)));
    for (const { id } of json.pulls) found.push(...refusals(await channelsOf(id)));
    return found;
  };
  return accepted({ contents, channelsOf, originalOf, faults });
}

async function readChannels(edge: EdgePull | undefined, read: ReadExportFile): Promise<Result<Channel[]>> {
  if (!edge) throw new Error('a pull that the export does not have');
  if (edge.channelsFile === null) return accepted([]);
  const bytes = await read(edge.channelsFile);
  if (!bytes) return refused(missingFile(edge.channelsFile));
  const values = valuesFromCsv(bytes, edge.channels.length, edge.channelsFile);
  return values.ok ? accepted(pullFromEdge(edge, values.value).channels) : values;
}

async function readOriginal(
  file: BookJson['files'][number] | undefined,
  path: string | undefined,
  read: ReadExportFile,
): Promise<Result<Uint8Array>> {
  if (!file) throw new Error('a file that the export does not have');
  const bytes = path === undefined ? null : await read(path);
  if (!bytes) return refused(missingFile(path ?? `originals/${file.hash}-…`));
  if (bytes.length === file.byteLength) return accepted(bytes);
  const message = `The original of ${file.name} has ${bytes.length} bytes; book.json says ${file.byteLength}. Restore the file from the export.`;
  return refused(remark('refusal', 'export-damaged', message));
}

const refusals = (result: Result<unknown>): Remark[] => (result.ok ? [] : result.remarks);

function missingFile(path: string): Remark {
  const message = `${path} is named in book.json but is not in the export. Restore the file, or export the book again.`;
  return remark('refusal', 'export-file-missing', message);
}
