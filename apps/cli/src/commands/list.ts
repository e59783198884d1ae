import type { BookListing } from '@pullbook/workshop';
import { Argument, type Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { peak } from '../print/figure.ts';
import { table } from '../print/table.ts';
import { type Shared, withBook, withShared } from '../shared-options.ts';

const KINDS = ['trials', 'pulls', 'combinations', 'engines', 'files'] as const;
type Kind = (typeof KINDS)[number];

export function addListCommand(program: Command, context: Context): void {
  withShared(program.command('list'))
    .description('what is in the book')
    .addArgument(new Argument('[kind]', 'only these').choices(KINDS))
    .addHelpText(
      'after',
      examples('pullbook list', 'pullbook list pulls --units si', 'pullbook list trials --json'),
    )
    .action(async (kind: Kind | undefined, _options, own: Command) => {
      const shared = context.shared(own);
      const { listBook } = await import('@pullbook/workshop');
      const listing = await withBook(shared, { create: false }, (book) => listBook(book, shared.view));
      const wanted = kind ? [kind] : KINDS;
      const { schemaVersion, book } = listing;
      const json = kind ? { schemaVersion, book, [kind]: listing[kind] } : listing;
      context.answer(shared, json, () => listingLines(listing, wanted, shared, context));
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
    const content = rows.length > 1 ? table(rows, '  ') : [dim('  none yet')];
    return ['', bold(kind[0]!.toUpperCase() + kind.slice(1)), ...content];
  });
  return [title, ...sections.flat()];
}

function rowsOf(listing: BookListing, kind: Kind, { view }: Shared): string[][] {
  switch (kind) {
    case 'trials':
      return [
        ['Id', 'Question', 'Answer'],
        ...listing.trials.map((one) => [one.id.slice(0, 8), one.question, one.answer]),
      ];
    case 'pulls':
      return [
        ['Id', 'Pull', 'Combination', 'Recorded', 'Peak power', 'Standard'],
        ...listing.pulls.map((one) => [
          one.id.slice(0, 8),
          one.name,
          one.combinationName ?? '–',
          one.recordedAt?.slice(0, 16).replace('T', ' ') ?? '–',
          peak(
            {
              figure: one.peakPowerKw,
              unit: 'kW',
              kind: 'power',
              atRpm: one.peakPowerRpm,
              stillClimbing: one.stillClimbing,
            },
            view,
          ),
          one.correction.standard,
        ]),
      ];
    case 'combinations':
      return [
        ['Id', 'Combination', 'Engine', 'Revision', 'Pulls'],
        ...listing.combinations.map((one) => [
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
        ...listing.engines.map((one) => [one.id.slice(0, 8), one.name, one.buildRevision]),
      ];
    case 'files':
      return [
        ['Hash', 'File', 'Bytes', 'Added'],
        ...listing.files.map((one) => [
          one.hash.slice(0, 12),
          one.name,
          String(one.byteLength),
          one.addedAt.slice(0, 16).replace('T', ' '),
        ]),
      ];
  }
}
