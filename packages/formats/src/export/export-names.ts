/** What says of a `book.json` that it is ours, and in which state of the format. */
export const EXPORT_FORMAT = 'pullbook open export';
export const EXPORT_SCHEMA_VERSION = 1;

/** A name that every file system takes: letters, digits, point, hyphen, underscore; others by their code. */
export function fileNameFrom(name: string): string {
  const safe = name.replace(/[^A-Za-z0-9._-]/g, (character) => `_${character.codePointAt(0)?.toString(16)}_`);
  return safe.replace(/^\.+/, '_').slice(0, 120) || '_';
}
