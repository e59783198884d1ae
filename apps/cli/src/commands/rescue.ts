import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { withShared } from '../shared-options.ts';

export function addRescueCommand(program: Command, context: Context): void {
  withShared(program.command('rescue'))
    .description('look through the book; of a damaged one, make a sound one of all that can be read')
    .addHelpText('after', examples('pullbook rescue --book shop', 'pullbook rescue --book shop --json'))
    .action(async (_options, own: Command) => {
      const shared = context.shared(own);
      const { faultOfBook, rescueBook, rescueLines } = await import('@pullbook/workshop');
      const damage = await faultOfBook(shared.bookFolder);
      const report = damage === null ? null : await rescueBook(shared.bookFolder, new Date());
      context.answer(shared, { schemaVersion: 1, damage, report }, () =>
        report === null
          ? ['The book is sound: every page and every curve. Nothing was changed.']
          : [`The book was damaged: ${damage}.`, ...rescueLines(report)],
      );
    });
}
