import { basename, resolve } from 'node:path';
import type { DecimalMark, UnitSystem } from '@pullbook/core/quantity';
import type { Book } from '@pullbook/workshop';
import { type Command, Option } from 'commander';

/** What every command takes. */
export interface Shared {
  bookFolder: string;
  /** Whether the folder was named on the command line. */
  bookNamed: boolean;
  json: boolean;
  /** As said on the command line, else as the shop's settings in the book have it, once that is open; else our own. */
  view: { units: UnitSystem; decimalMark: DecimalMark };
  /** Units of remarks: those of `view` for a person, `null` for JSON, which is in SI. */
  wordsIn(): Shared['view'] | null;
  /** What of it was said. */
  saidView: Partial<Shared['view']>;
}

/** Adds the options that every command takes. They may also stand before the command. */
export function withShared(command: Command): Command {
  return command
    .addOption(new Option('--book <folder>', 'folder of the book (default: $PULLBOOK_BOOK, or ./book)'))
    .addOption(new Option('--json', 'print one JSON value and nothing else'))
    .addOption(
      new Option('--units <system>', 'units for people (default: the shop’s, else us)').choices(['us', 'si']),
    )
    .addOption(
      new Option('--decimal <mark>', 'decimal mark for people (default: the shop’s, else .)').choices([
        '.',
        ',',
      ]),
    );
}

/** The shared options of a command that was called. */
export function sharedOf(command: Command, env: Record<string, string | undefined>): Shared {
  const given = command.optsWithGlobals<{
    book?: string;
    json?: boolean;
    units?: UnitSystem;
    decimal?: DecimalMark;
  }>();
  const saidView: Shared['saidView'] = {
    ...(given.units === undefined ? {} : { units: given.units }),
    ...(given.decimal === undefined ? {} : { decimalMark: given.decimal }),
  };
  const shared: Shared = {
    bookFolder: resolve(given.book ?? (env.PULLBOOK_BOOK || 'book')),
    bookNamed: given.book !== undefined,
    json: given.json === true,
    view: { units: 'us', decimalMark: '.', ...saidView },
    wordsIn: () => (shared.json ? null : shared.view),
    saidView,
  };
  return shared;
}

/** Opens the book for looking, `null` where there is none: a preview needs no book and uses what one remembers. */
export async function withBookIfThere<T>(
  shared: Shared,
  look: (book: Book | null) => Promise<T>,
): Promise<T> {
  try {
    return await withBook(shared, { create: false }, look);
  } catch (trouble) {
    const isMissing = trouble instanceof Error && 'code' in trouble && trouble.code === 'missing';
    if (isMissing) return look(null);
    throw trouble;
  }
}

/** Opens the book for one act and closes it whatever happens. `create`: makes it where there is none. */
export async function withBook<T>(
  shared: Shared,
  options: { create: boolean },
  act: (book: Book) => Promise<T>,
): Promise<T> {
  const { openBook } = await import('@pullbook/workshop');
  const create = options.create ? { name: basename(shared.bookFolder) } : null;
  const book = await openBook(shared.bookFolder, { create });
  try {
    await takeSettings(shared, book);
    return await act(book);
  } finally {
    await book.close();
  }
}

/** Fills in from the settings of the book what was not said of how figures are shown. */
export async function takeSettings(shared: Shared, book: Book): Promise<void> {
  const { settingsOf } = await import('@pullbook/workshop');
  const { units, decimalMark } = await settingsOf(book);
  shared.view = { units, decimalMark, ...shared.saidView };
}
