import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { counted } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withShared } from '../shared-options.ts';

export function addRestoreCommand(program: Command, context: Context): void {
  withShared(program.command('restore <export>'))
    .description('make a new book of an open export; --book names its folder, which must be new')
    .addHelpText('after', examples('pullbook restore book-2026-03-14 --book restored'))
    .action(async (exported: string, _options, own: Command) => {
      const shared = context.shared(own);
      const { restoreBook } = await import('@pullbook/workshop');
      const report = valueOrRefusal(await restoreBook(exported, shared.bookFolder));
      context.answer(shared, report, () => [
        `Restored ${counted(report.pulls, 'pull')}, ${counted(report.combinations, 'combination')} and ${counted(report.trials, 'trial')} to ${report.folder}.`,
      ]);
    });
}
