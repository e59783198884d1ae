import { bookToJson } from './book-json.ts';
import { type EdgePull, edgeFromPull } from './edge-book.ts';
import { fileNameFrom } from './export-names.ts';
import type { ExportedBook, ExportFile, ExportSource } from './exported-book.ts';
import { columnNames, pullToCsv } from './pull-to-csv.ts';
import { exportReadme } from './readme.ts';

/**
 * The whole book as open files, one after the other: a README, a CSV with its metadata for each pull with channels, the
 * original bytes, and `book.json` last, so that an export that was cut off is none. `openExport` reads the same content
 * back, doubles bit for bit. Only one pull or one original is held at a time. `question`: of a book narrowed to one trial.
 */
export async function* exportFiles(
  contents: ExportedBook,
  { channelsOf, originalOf }: ExportSource,
  question: string | null = null,
): AsyncGenerator<ExportFile> {
  yield { path: 'README.txt', bytes: bytesOf(exportReadme(contents.info.name, question)) };
  const pulls: EdgePull[] = [];
  for (const head of contents.pulls) {
    const pull = { ...head, channels: head.form === 'curve' ? await channelsOf(head.id) : [] };
    const name = fileNameFrom(pull.id);
    const path = pull.channels.length > 0 ? `pulls/${name}.csv` : null;
    if (path) {
      const { csv, metadata } = pullToCsv(pull, `${name}.csv`);
      yield { path, bytes: bytesOf(csv) };
      yield { path: `${path}-metadata.json`, bytes: jsonBytes(metadata) };
    }
    pulls.push(edgeFromPull(pull, columnNames(pull.channels), path));
  }
  const originals = contents.files.map(({ hash, name }) => ({
    hash,
    name,
    path: `originals/${fileNameFrom(hash)}-${fileNameFrom(name)}`,
  }));
  for (const { hash, path } of originals) yield { path, bytes: await originalOf(hash) };
  yield { path: 'book.json', bytes: jsonBytes(bookToJson(contents, pulls, originals)) };
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const jsonBytes = (value: unknown): Uint8Array => bytesOf(`${JSON.stringify(value, null, 2)}\n`);
