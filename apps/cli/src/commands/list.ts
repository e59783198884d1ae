import type { BookListing, PullSearch } from '@pullbook/workshop';
import { Argument, type Command, Option } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { countValue, textsValue } from '../option-values.ts';
import { peakPower } from '../print/figure.ts';
import { table } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withShared } from '../shared-options.ts';

const KINDS = ['trials', 'pulls', 'combinations', 'engines', 'files', 'enquiries'] as const;
type Kind = (typeof KINDS)[number];

/** Filters as the command line has them; those of pulls make the list one of pulls. */
type ListOptions = PullSearch & { noTrial?: boolean; measured?: boolean };

export function addListCommand(program: Command, context: Context): void {
  withShared(program.command('list'))
    .description('what is in the book; pulls, trials and enquiries in pages, the one added last first')
    .addArgument(new Argument('[kind]', 'only these').choices(KINDS))
    .option('--find <words>', 'all these words, parts of words too')
    .option('--combination <id>', 'pulls of this combination; none: of no combination (repeat)', textsValue)
    .option('--engine <id>', 'pulls of this engine')
    .option('--cell <name>', 'pulls made in this cell')
    .option('--from-day <day>', 'pulls from this day on: 2026-03-14')
    .option('--to-day <day>', 'pulls up to this day')
    .option('--power-from <power>', 'peak power at least: "300 hp"')
    .option('--power-to <power>', 'peak power at most')
    .addOption(
      new Option('--boosted <what>', 'with a supercharger or without').choices(['yes', 'no', 'unknown']),
    )
    .addOption(new Option('--outcome <what>', 'how the pull ended').choices(['completed', 'aborted']))
    .option('--in-trial', 'pulls that stand in a trial')
    .option('--no-trial', 'pulls that stand in none')
    .option('--invented', 'invented pulls only')
    .option('--measured', 'without invented pulls')
    .addOption(new Option('--sort <by>', 'order of the pulls').choices(['newest', 'power', 'name']))
    .option('--page <number>', 'page, from 1', countValue)
    .option('--size <rows>', 'rows a page', countValue)
    .addHelpText(
      'after',
      examples(
        'pullbook list',
        'pullbook list pulls --units si',
        'pullbook list pulls --find "base cam" --power-from "300 hp" --sort power',
        'pullbook list trials --json',
      ),
    )
    .action(async (kind: Kind | undefined, options: ListOptions & { trial: boolean }, own: Command) => {
      const shared = context.shared(own);
      const { trial, measured, inTrial, invented, ...search } = options;
      const { listBook } = await import('@pullbook/workshop');
      const wanted = kind ? [kind] : KINDS;
      const listing = valueOrRefusal(
        await withBook(shared, { create: false }, (book) =>
          listBook(book, shared.view, wanted, {
            ...search,
            inTrial: inTrial ? true : trial ? undefined : false,
            invented: invented ? true : measured ? false : undefined,
          }),
        ),
      );
      if (listing.book.clock !== null) context.terminal.err(`${listing.book.clock}\n`);
      context.answer(shared, listing, () => listingLines(listing, wanted, shared, context));
    });
}

function listingLines(
  listing: BookListing,
  kinds: readonly Kind[],
  shared: Shared,
  context: Context,
): string[] {
  const { bold, dim } = context.colours;
  const { book } = listing;
  const title = `${bold(book.name)}${book.invented ? ' (invented data)' : ''}  ${dim(shared.bookFolder)}`;
  const sections = kinds.map((kind) => {
    const rows = rowsOf(listing, kind, shared);
    const nothing = book.counts[kind] === 0 ? '  none yet' : '  none fits';
    const content = rows.length > 1 ? table(rows, '  ') : [dim(nothing)];
    return ['', bold(kind[0]!.toUpperCase() + kind.slice(1)), ...content, ...pageLines(listing, kind, dim)];
  });
  return [title, ...sections.flat()];
}

/** Which page this is, where there are more. */
function pageLines({ pages }: BookListing, kind: Kind, dim: (text: string) => string): string[] {
  const where = kind === 'pulls' || kind === 'trials' || kind === 'enquiries' ? pages[kind] : undefined;
  if (!where || (where.pages === 1 && where.total === where.all)) return [];
  const fit = where.total === where.all ? `${where.all} ${kind}` : `${where.total} of ${where.all}`;
  return [dim(`  ${fit}, page ${where.page} of ${where.pages}`)];
}

function rowsOf(listing: BookListing, kind: Kind, { view }: Shared): string[][] {
  switch (kind) {
    case 'trials':
      return [
        ['Id', 'Question', 'Answer'],
        ...(listing.trials ?? []).map((one) => [one.id.slice(0, 8), one.question, one.answer]),
      ];
    case 'pulls':
      return [
        ['Id', 'Pull', 'Combination', 'Recorded', 'Peak power', 'Standard'],
        ...(listing.pulls ?? []).map((one) => [
          one.id.slice(0, 8),
          one.name,
          one.combinationName ?? '–',
          one.recordedAt?.slice(0, 16).replace('T', ' ') ?? '–',
          peakPower(one, view),
          one.correction.standard,
        ]),
      ];
    case 'combinations':
      return [
        ['Id', 'Combination', 'Engine', 'Revision', 'Pulls'],
        ...(listing.combinations ?? []).map((one) => [
          one.id.slice(0, 8),
          one.name,
          one.engineName,
          String(one.revision),
          String(one.pulls),
        ]),
      ];
    case 'engines':
      return [
        ['Id', 'Engine', 'Build'],
        ...(listing.engines ?? []).map((one) => [one.id.slice(0, 8), one.name, one.buildRevision]),
      ];
    case 'enquiries':
      return [
        ['Id', 'Question', 'Answer'],
        ...(listing.enquiries ?? []).map((one) => [one.id.slice(0, 8), one.question, one.answer]),
      ];
    case 'files':
      return [
        ['Hash', 'File', 'Bytes', 'Added'],
        ...(listing.files ?? []).map((one) => [
          one.hash.slice(0, 12),
          one.name,
          String(one.byteLength),
          one.addedAt.slice(0, 16).replace('T', ' '),
        ]),
      ];
  }
}
