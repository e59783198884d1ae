import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addPackageCommands(program: Command, context: Context): void {
  const parent = program.command('package').description('parts that belong to one change by declaration');
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
