import type { Combination } from '@pullbook/core/combination';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Trial } from '@pullbook/core/trial';
import type { Book, NamedKind, PullHead } from '@pullbook/store';
import { findOne, type Named } from './find-one.ts';

/**
 * What a person means by an id, the beginning of one, or a name, among the things of these kinds. The book is asked for what
 * fits; only where nothing does are all names read, to say which are nearest.
 *
 * @example findNamed(book, ['trial', 'pull'], '3f2a', 'pull or trial')
 */
export async function findNamed<Kind extends NamedKind>(
  book: Book,
  kinds: readonly Kind[],
  given: string,
  what: string,
): Promise<Result<Named & { kind: Kind }>> {
  const fitting = await ofKinds(kinds, (kind) => book.named(kind, given));
  const found = fitting.length > 0 ? fitting : await ofKinds(kinds, (kind) => allNames(book, kind));
  return findOne(found, given, what);
}

/** The combination a person means; its sheet is read for it alone. */
export async function findCombination(book: Book, given: string): Promise<Result<Combination>> {
  const found = await findNamed(book, ['combination'], given, 'combination');
  return found.ok ? accepted((await book.combination(found.value.id))!) : found;
}

/** The pull a person means, without its channels. */
export async function findPull(book: Book, given: string): Promise<Result<PullHead>> {
  const found = await findNamed(book, ['pull'], given, 'pull');
  return found.ok ? accepted((await book.pullHeadsOf([found.value.id]))[0]!) : found;
}

/** The trial a person means; its question is its name. */
export async function findTrial(book: Book, given: string): Promise<Result<Trial>> {
  const found = await findNamed(book, ['trial'], given, 'trial');
  return found.ok ? accepted((await book.trial(found.value.id))!) : found;
}

async function ofKinds<Kind extends NamedKind>(
  kinds: readonly Kind[],
  names: (kind: Kind) => Promise<Named[]>,
): Promise<(Named & { kind: Kind })[]> {
  const all = await Promise.all(
    kinds.map(async (kind) => (await names(kind)).map(({ id, name }) => ({ id, name, kind }))),
  );
  return all.flat();
}

async function allNames(book: Book, kind: NamedKind): Promise<Named[]> {
  switch (kind) {
    case 'pull':
      return book.pullNames();
    case 'trial':
      return (await book.trialNames()).map(({ id, question }) => ({ id, name: question }));
    case 'combination':
      return book.combinationNames();
    case 'package':
      return book.packages();
    case 'engine':
      return book.engines();
    case 'cell':
      return book.cells();
    case 'compressorMap':
      return book.compressorMaps();
    case 'enquiry':
      return (await book.enquiryNames()).map(({ id, question }) => ({ id, name: question }));
  }
}
