import type { JsonSchema } from '@pullbook/core/combination';
import { type Remark, remark } from '@pullbook/core/remark';
import type { Written, WrittenPath } from '../yaml/read-written.ts';

/** Where reading stands, and what it has to say so far. */
export interface Reading extends Pick<Written, 'placeOf' | 'blockLine'> {
  remarks: Remark[];
}

/** How one value of a match file is read, and what it looks like; the reader and the JSON schema are made of the same shape. */
export interface Shape<T> {
  /** The value in inside units; `undefined`: not given, unknown, or refused with a remark. */
  read: (value: unknown, path: WrittenPath, reading: Reading) => T | undefined;
  /** Made when it is asked for: reading does without. */
  readonly schema: JsonSchema;
}

/** What a shape reads. */
export type Read<S> = S extends Shape<infer T> ? T : never;

/** Says that a value is refused, with its place and line. */
export function refuse(reading: Reading, path: WrittenPath, code: string, message: string): undefined {
  reading.remarks.push(atPlace(reading, path, remark('refusal', code, `${pathWords(path)}: ${message}`)));
  return undefined;
}

/** The remark with its line, unless it has one. */
export function atPlace({ placeOf }: Reading, path: WrittenPath, item: Remark): Remark {
  if (item.line !== undefined) return item;
  const place = placeOf(path) ?? placeOf(path.slice(0, -1));
  return place === null ? item : { ...item, ...place };
}

/** `whatIf, item 2, blowerPulleyDiameter` */
export const pathWords = (path: WrittenPath): string =>
  path.length === 0
    ? 'The file'
    : path
        .map((part) => (typeof part === 'number' ? `item ${part + 1}` : part))
        .join('.')
        .replace(/\.item (\d+)/g, ', item $1');

const UNKNOWN = /^(unknown|not known|\?|)$/i;

/** Said to be unknown, or not said. */
export const isUnknown = (value: unknown): boolean =>
  value === null || value === undefined || (typeof value === 'string' && UNKNOWN.test(value.trim()));

/** What stands there instead, in words. */
export function inWords(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? 'a group of fields' : `"${String(value).slice(0, 60)}"`;
}

/** Any text, or a number meant as one. */
export const text = (about: string): Shape<string> => ({
  schema: { type: ['string', 'number'], description: about },
  read: (value, path, reading) => {
    if (isUnknown(value)) return undefined;
    if (typeof value === 'string' || typeof value === 'number') return String(value).trim();
    return refuse(reading, path, 'match-text', `${inWords(value)} stands where a text is due.`);
  },
});

/** One of a few words; capitals and hyphens are forgiven. */
export const word = <const Word extends string>(words: readonly Word[], about: string): Shape<Word> => ({
  schema: { enum: words, description: about },
  read: (value, path, reading) => {
    if (isUnknown(value)) return undefined;
    const plain = (one: unknown) =>
      String(one)
        .trim()
        .toLowerCase()
        .replace(/[\s_-]+/g, ' ');
    const found = words.find((one) => plain(one) === plain(value));
    return (
      found ??
      refuse(reading, path, 'match-word', `${inWords(value)} is not known. Allowed: ${words.join(', ')}.`)
    );
  },
});

export const truth = (about: string): Shape<boolean> => ({
  schema: { enum: [true, false, 'yes', 'no'], description: about },
  read: (value, path, reading) => {
    if (isUnknown(value)) return undefined;
    if (value === true || value === 'yes') return true;
    if (value === false || value === 'no') return false;
    return refuse(reading, path, 'match-truth', `${inWords(value)} is neither yes nor no.`);
  },
});

export const whole = ([low, high]: readonly [number, number], about: string): Shape<number> => ({
  schema: { type: 'integer', minimum: low, maximum: high, description: about },
  read: (value, path, reading) => {
    if (isUnknown(value)) return undefined;
    const number = typeof value === 'string' && /^\d+$/.test(value.trim()) ? Number(value) : value;
    if (Number.isInteger(number) && (number as number) >= low && (number as number) <= high)
      return number as number;
    return refuse(
      reading,
      path,
      'match-whole',
      `${inWords(value)} is not a whole number from ${low} to ${high}.`,
    );
  },
});

/** A list of things of one shape; one alone may stand without its list. */
export const list = <T>(item: Shape<T>, most: number): Shape<T[]> => ({
  get schema() {
    return { anyOf: [{ type: 'array', items: item.schema, maxItems: most }, item.schema] };
  },
  read: (value, path, reading) => {
    if (isUnknown(value)) return undefined;
    if (!Array.isArray(value)) {
      const alone = item.read(value, path, reading);
      return alone === undefined ? undefined : [alone];
    }
    if (value.length > most)
      return refuse(reading, path, 'match-list', `${value.length} items; at most ${most} are read.`);
    return value.flatMap((one, at) => item.read(one, [...path, at], reading) ?? []);
  },
});

/** A word that stands for a value, or the shape itself: `none`, or a cooler. */
export const wordOr = <Word extends string, Meaning, T>(
  meanings: Readonly<Record<Word, Meaning>>,
  other: Shape<T>,
): Shape<Meaning | T> => ({
  get schema() {
    return { anyOf: [{ enum: Object.keys(meanings) }, other.schema] };
  },
  read: (value, path, reading) => {
    const key = typeof value === 'string' ? value.trim().toLowerCase() : '';
    return Object.hasOwn(meanings, key) ? meanings[key as Word] : other.read(value, path, reading);
  },
});
