import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import {
  combinationFromEdge,
  type EdgeCombination,
  type EdgePull,
  edgeFromCombination,
  edgeFromPull,
  pullFromEdge,
} from './edge-book.ts';
import type { ExportedBook, ExportFile, Originals } from './exported-book.ts';
import { columnNames, pullToCsv, valuesFromCsv } from './pull-to-csv.ts';
import { exportReadme } from './readme.ts';

const FORMAT = 'pullbook open export';
const SCHEMA_VERSION = 1;

/** What stands in `book.json`. */
interface BookJson extends Omit<ExportedBook, 'pulls' | 'combinations'> {
  format: string;
  schemaVersion: number;
  combinations: EdgeCombination[];
  pulls: EdgePull[];
  originals: { hash: string; name: string; path: string }[];
}

/**
 * The whole book as open files: `book.json`, a CSV with its metadata for each pull with channels, the original bytes,
 * and a README. `readBookFiles` gives the same content back, doubles bit for bit.
 */
export function writeBookFiles(contents: ExportedBook, originals: Originals): ExportFile[] {
  const files: ExportFile[] = [];
  const { pulls, combinations, ...rest } = contents;
  const edgePulls = pulls.map((pull) => {
    const name = fileNameFrom(pull.id);
    const path = pull.channels.length > 0 ? `pulls/${name}.csv` : null;
    if (path) {
      const { csv, metadata } = pullToCsv(pull, `${name}.csv`);
      files.push(
        { path, bytes: bytesOf(csv) },
        { path: `${path}-metadata.json`, bytes: jsonBytes(metadata) },
      );
    }
    return edgeFromPull(pull, columnNames(pull.channels), path);
  });
  const kept = [...originals].map(([hash, { name, bytes }]) => {
    const path = `originals/${fileNameFrom(hash)}-${fileNameFrom(name)}`;
    files.push({ path, bytes });
    return { hash, name, path };
  });
  const book: BookJson = {
    format: FORMAT,
    schemaVersion: SCHEMA_VERSION,
    ...rest,
    combinations: combinations.map(edgeFromCombination),
    pulls: edgePulls,
    originals: kept,
  };
  const readme = { path: 'README.txt', bytes: bytesOf(exportReadme(contents.info.name)) };
  return [readme, { path: 'book.json', bytes: jsonBytes(book) }, ...files];
}

/**
 * Reads an export back. Files that the export does not name are passed over. Refused, naming the file: no `book.json`,
 * another format or a newer one, a file that is missing or does not fit what `book.json` says of it.
 */
export function readBookFiles(files: ExportFile[]): Result<{ contents: ExportedBook; originals: Originals }> {
  const byPath = new Map(
    files.map(({ path, bytes }) => [path.replaceAll('\\', '/').replace(/^\.\//, ''), bytes]),
  );
  const parsed = parseBook(byPath.get('book.json'));
  if (!parsed.ok) return parsed;
  const {
    format: _,
    schemaVersion: __,
    originals: listed,
    pulls: edgePulls,
    combinations,
    ...rest
  } = parsed.value;
  const remarks: Remark[] = [];
  const originals: Originals = new Map();
  for (const { hash, name, path } of listed) {
    const bytes = byPath.get(path);
    if (bytes) originals.set(hash, { name, bytes });
    else remarks.push(missingFile(path));
  }
  for (const file of rest.files) {
    const bytes = originals.get(file.hash)?.bytes;
    if (!bytes && !listed.some(({ hash }) => hash === file.hash))
      remarks.push(missingFile(`originals/${file.hash}-…`));
    if (bytes && bytes.length !== file.byteLength) {
      const message = `The original of ${file.name} has ${bytes.length} bytes; book.json says ${file.byteLength}. Restore the file from the export.`;
      remarks.push(remark('refusal', 'export-damaged', message));
    }
  }
  const pulls: ExportedBook['pulls'] = [];
  for (const edge of edgePulls) {
    const values = readValues(edge, byPath);
    if (values.ok) pulls.push(pullFromEdge(edge, values.value));
    else remarks.push(...values.remarks);
  }
  const [first, ...others] = remarks;
  if (first) return refused(first, ...others);
  return accepted({
    contents: { ...rest, pulls, combinations: combinations.map(combinationFromEdge) },
    originals,
  });
}

function readValues(edge: EdgePull, byPath: Map<string, Uint8Array>): Result<Float64Array[]> {
  if (edge.channelsFile === null) return accepted([]);
  const bytes = byPath.get(edge.channelsFile);
  if (!bytes) return refused(missingFile(edge.channelsFile));
  return valuesFromCsv(textOf(bytes), edge.channels.length, edge.channelsFile);
}

function missingFile(path: string): Remark {
  const message = `${path} is named in book.json but is not in the export. Restore the file, or export the book again.`;
  return remark('refusal', 'export-file-missing', message);
}

const LISTS = [
  'engines',
  'combinations',
  'packages',
  'setUps',
  'sessions',
  'pulls',
  'files',
  'trials',
  'log',
  'originals',
] as const;

function parseBook(bytes: Uint8Array | undefined): Result<BookJson> {
  if (!bytes) {
    return refused(
      remark(
        'refusal',
        'no-export',
        'There is no book.json: this is not an export, or not its folder. Give the folder that holds book.json.',
      ),
    );
  }
  let book: Partial<BookJson> | null;
  try {
    book = JSON.parse(textOf(bytes)) as Partial<BookJson> | null;
  } catch (fault) {
    const message = `book.json is not whole JSON (${fault instanceof Error ? fault.message : String(fault)}). Restore it, or export the book again.`;
    return refused(remark('refusal', 'export-damaged', message));
  }
  if (book?.format !== FORMAT) {
    return refused(
      remark(
        'refusal',
        'no-export',
        `book.json is not an open export: its format is “${book?.format ?? 'not stated'}”, “${FORMAT}” is expected.`,
      ),
    );
  }
  if (book.schemaVersion !== SCHEMA_VERSION) {
    const message = `book.json has schema version ${book.schemaVersion}; this program reads ${SCHEMA_VERSION}. Use a newer program.`;
    return refused(remark('refusal', 'export-newer', message));
  }
  const lacking = [...LISTS.filter((list) => !Array.isArray(book[list])), ...(book.info ? [] : ['info'])];
  if (lacking.length > 0) {
    return refused(
      remark(
        'refusal',
        'export-damaged',
        `book.json lacks ${lacking.join(', ')}. Restore it, or export the book again.`,
      ),
    );
  }
  const odd = book.pulls?.find((pull) => !Array.isArray(pull?.channels) || !pull.sweep);
  if (odd !== undefined) {
    return refused(
      remark(
        'refusal',
        'export-damaged',
        `book.json: pull “${odd?.id ?? '?'}” lacks channels or sweep. Restore it, or export the book again.`,
      ),
    );
  }
  return accepted(book as BookJson);
}

/** A name that every file system takes: letters, digits, point, hyphen, underscore; others by their code. */
function fileNameFrom(name: string): string {
  const safe = name.replace(/[^A-Za-z0-9._-]/g, (character) => `_${character.codePointAt(0)?.toString(16)}_`);
  return safe.replace(/^\.+/, '_').slice(0, 120) || '_';
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const jsonBytes = (value: unknown): Uint8Array => bytesOf(`${JSON.stringify(value, null, 2)}\n`);
const textOf = (bytes: Uint8Array): string => new TextDecoder('utf-8').decode(bytes);
