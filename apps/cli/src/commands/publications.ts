import type { ShownPublication } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { staleLines } from '../print/stale.ts';
import { counted } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

/** `publications`, and `publications link`. */
export function addPublicationsCommands(program: Command, context: Context): void {
  const publications = withShared(program.command('publications [trial]'))
    .description('what left the shop, of one trial or of all, and what of it is no longer so')
    .option('--stale', 'only those that carry an old figure')
    .addHelpText(
      'after',
      examples(
        'pullbook publications',
        'pullbook publications 12ab --stale --json',
        'pullbook publications link 7c01 --where "club magazine, page 12"',
      ),
    )
    .action(async (trial: string | undefined, options: { stale?: boolean }, own: Command) => {
      const shared = context.shared(own);
      const { publicationsPage } = await import('@pullbook/workshop');
      const all = valueOrRefusal(
        await withBook(shared, { create: false }, (book) =>
          publicationsPage(book, shared.view, trial ?? null),
        ),
      );
      const asked = options.stale ? all.filter(({ stale }) => stale.length > 0) : all;
      context.answer(shared, { schemaVersion: 1, publications: asked }, () =>
        asked.length === 0
          ? [
              options.stale
                ? 'Nothing that was published carries an old figure.'
                : 'Nothing was published yet.',
            ]
          : asked.flatMap((one) => publicationLines(one, context)),
      );
    });
  addLinkCommand(publications, context);
}

interface LinkOptions {
  where: string;
  day?: string;
  note?: string;
  takeOut?: boolean;
}

function addLinkCommand(publications: Command, context: Context): void {
  withShared(publications.command('link <publication>'))
    .description('note where a publication appeared')
    .requiredOption('--where <place>', 'an address, or words: club magazine, page 12')
    .option('--day <date>', 'since when: 2026-03-14')
    .option('--note <text>', 'anything else')
    .option('--take-out', 'it did not appear there after all: that place is taken out')
    .addHelpText(
      'after',
      examples(
        'pullbook publications link 7c01 --where "club magazine, page 12" --day 2026-05-01',
        'pullbook publications link 7c01 --where "club magazine, page 12" --take-out',
      ),
    )
    .action(async (id: string, { takeOut, ...place }: LinkOptions, own: Command) => {
      const shared = context.shared(own);
      const { addLink, takeOutLink } = await import('@pullbook/workshop');
      const noted = valueOrRefusal(
        await withBook(shared, { create: false }, (book) =>
          takeOut ? takeOutLink(book, id, place.where) : addLink(book, id, place),
        ),
      );
      const what = takeOut ? 'Taken out of' : 'Noted';
      context.answer(shared, noted, () => [`${what} where publication ${noted.id.slice(0, 8)} appeared.`]);
    });
}

function publicationLines(one: ShownPublication, context: Context): string[] {
  const { bold, dim } = context.colours;
  return [
    bold(`${one.id.slice(0, 8)}  ${one.at.slice(0, 10)}  ${one.question}`),
    `  ${one.sentence}`,
    dim(`  ${filesText(one)}`),
    ...one.links.map(({ where, day, note }) => `  ${[where, day ?? '', note].filter(Boolean).join(' · ')}`),
    ...staleLines(one, '  '),
  ];
}

/** `15 stills, 1 clip`, with the name where there is only one file. */
function filesText({ files, kinds }: ShownPublication): string {
  if (files.length === 1) return files[0]!.name;
  return kinds.map((kind) => counted(files.filter((file) => file.kind === kind).length, kind)).join(', ');
}
