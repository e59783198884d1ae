import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { table } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addPackageCommands(program: Command, context: Context): void {
  const parent = program.command('package').description('parts that belong to one change by declaration');
  withShared(parent.command('list'))
    .description('the packages of the book and what they cover')
    .addHelpText('after', examples('pullbook package list'))
    .action(async (_options, own: Command) => {
      const shared = context.shared(own);
      const packages = await withBook(shared, { create: false }, (book) => book.packages());
      context.answer(shared, { schemaVersion: 1, packages }, () =>
        packages.length === 0
          ? ['No package is declared yet.']
          : table([
              ['Id', 'Name', 'Covers'],
              ...packages.map((one) => [one.id.slice(0, 8), one.name, one.covers.join(', ')]),
            ]),
      );
    });
  withShared(parent.command('add <name>'))
    .description('declare a package: a supercharger with its drive, cooler and injectors')
    .requiredOption('--covers <part...>', 'sections of the sheet, or one line of a section')
    .addHelpText(
      'after',
      examples(
        'pullbook package add "Supercharger" --covers supercharger drive cooler fuelSystem.injectorFlow',
      ),
    )
    .action(async (name: string, options: { covers: string[] }, own: Command) => {
      const shared = context.shared(own);
      const { addPackage } = await import('@pullbook/workshop');
      const added = await withBook(shared, { create: true }, (book) =>
        addPackage(book, name, options.covers),
      );
      const { id } = valueOrRefusal(added);
      context.answer(shared, { id }, () => [`Added package ${id.slice(0, 8)}.`]);
    });
}
