import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { BookJson } from './book-json.ts';
import { EXPORT_FORMAT, EXPORT_SCHEMA_VERSION } from './export-names.ts';

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

/** `book.json` from its bytes. Refused, saying why: not there, not whole, of another format or a newer one. */
export function parseBook(bytes: Uint8Array | null): Result<BookJson> {
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
    book = JSON.parse(new TextDecoder('utf-8').decode(bytes)) as Partial<BookJson> | null;
  } catch (fault) {
    const message = `book.json is not whole JSON (${fault instanceof Error ? fault.message : String(fault)}). Restore it, or export the book again.`;
    return refused(remark('refusal', 'export-damaged', message));
  }
  if (book?.format !== EXPORT_FORMAT) {
    return refused(
      remark(
        'refusal',
        'no-export',
        `book.json is not an open export: its format is “${book?.format ?? 'not stated'}”, “${EXPORT_FORMAT}” is expected.`,
      ),
    );
  }
  if (book.schemaVersion !== EXPORT_SCHEMA_VERSION) {
    const message = `book.json has schema version ${book.schemaVersion}; this program reads ${EXPORT_SCHEMA_VERSION}. Use a newer program.`;
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
