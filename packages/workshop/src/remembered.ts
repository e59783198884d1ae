import { createHash } from 'node:crypto';
import type { Book } from '@pullbook/store';

const memories = new WeakMap<Book, Map<string, unknown>>();
const works = new WeakMap<Book, Map<string, Promise<unknown>>>();

/** Entries kept a book; the one that was not asked for longest goes first. A view of a pull takes some 10 kB, an answer some 100 kB. */
const KEPT = 400;

/**
 * A computed thing by everything it depends on, for as long as the book is open; asked for again while it is being worked out, it
 * is waited for. Only for what can be computed anew from that at any time: measured channels never change, all else must be in `rests`.
 */
export function remembered<T>(book: Book, rests: string, compute: () => Promise<T>): Promise<T> {
  const memory = memoryOf(book);
  const key = shortOf(rests);
  if (memory.has(key)) return Promise.resolve(kept(memory, key, memory.get(key)) as T);
  const underWay = underWayOf(book);
  const begun = underWay.get(key) as Promise<T> | undefined;
  if (begun !== undefined) return begun;
  const work = compute()
    .then((value) => kept(memory, key, value))
    .finally(() => underWay.delete(key));
  underWay.set(key, work);
  return work;
}

/** The same of what is computed without waiting. */
export function rememberedNow<T>(book: Book, rests: string, compute: () => T): T {
  const memory = memoryOf(book);
  const key = shortOf(rests);
  return kept(memory, key, memory.has(key) ? (memory.get(key) as T) : compute());
}

/** What a thing depends on may be longer than the thing: a match names all pulls of its engine. */
const shortOf = (rests: string): string => createHash('sha256').update(rests).digest('base64');

const memoryOf = (book: Book) => ofBook(memories, book);
const underWayOf = (book: Book) => ofBook(works, book);

function ofBook<T>(all: WeakMap<Book, Map<string, T>>, book: Book): Map<string, T> {
  const found = all.get(book) ?? new Map<string, T>();
  all.set(book, found);
  return found;
}

function kept<T>(memory: Map<string, unknown>, key: string, value: T): T {
  memory.delete(key);
  memory.set(key, value);
  if (memory.size > KEPT) memory.delete(memory.keys().next().value!);
  return value;
}
