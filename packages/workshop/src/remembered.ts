import type { Book } from '@pullbook/store';

const memories = new WeakMap<Book, Map<string, unknown>>();

/** Entries kept a book; the one that was not asked for longest goes first. A view of a pull takes some 10 kB, an answer some 100 kB. */
const KEPT = 400;

/**
 * A computed thing by everything it depends on, for as long as the book is open. Only for what can be computed anew
 * from the key's content at any time: measured channels never change, all else must be in the key.
 */
export async function remembered<T>(book: Book, key: string, compute: () => Promise<T>): Promise<T> {
  const memory = memoryOf(book);
  return memory.has(key) ? (kept(memory, key, memory.get(key)) as T) : kept(memory, key, await compute());
}

/** The same of what is computed without waiting. */
export function rememberedNow<T>(book: Book, key: string, compute: () => T): T {
  const memory = memoryOf(book);
  return kept(memory, key, memory.has(key) ? (memory.get(key) as T) : compute());
}

function memoryOf(book: Book): Map<string, unknown> {
  const memory = memories.get(book) ?? new Map<string, unknown>();
  memories.set(book, memory);
  return memory;
}

function kept<T>(memory: Map<string, unknown>, key: string, value: T): T {
  memory.delete(key);
  memory.set(key, value);
  if (memory.size > KEPT) memory.delete(memory.keys().next().value!);
  return value;
}
