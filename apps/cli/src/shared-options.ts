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
  view: { units: UnitSystem; decimalMark: DecimalMark };
}

/** Adds the options that every command takes. They may also stand before the command. */
export function withShared(command: Command): Command {
  return command
    .addOption(new Option('--book <folder>', 'folder of the book (default: $PULLBOOK_BOOK, or ./book)'))
    .addOption(new Option('--json', 'print one JSON value and nothing else'))
    .addOption(new Option('--units <system>', 'units for people (default: us)').choices(['us', 'si']))
    .addOption(new Option('--decimal <mark>', 'decimal mark for people (default: .)').choices(['.', ',']));
}

/** The shared options of a command that was called. */
export function sharedOf(command: Command, env: Record<string, string | undefined>): Shared {
  const given = command.optsWithGlobals<{
    book?: string;
    json?: boolean;
    units?: UnitSystem;
    decimal?: DecimalMark;
  }>();
  return {
    bookFolder: resolve(given.book ?? (env.PULLBOOK_BOOK || 'book')),
    bookNamed: given.book !== undefined,
    json: given.json === true,
    view: { units: given.units ?? 'us', decimalMark: given.decimal ?? '.' },
  };
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
    return await act(book);
  } finally {
    await book.close();
  }
}
