import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { counted } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withShared } from '../shared-options.ts';

export function addRestoreCommand(program: Command, context: Context): void {
  withShared(program.command('restore <folder>'))
    .description('make a new book of an export or a backup; --book names its folder, which must be new')
    .option('--at <time>', 'of several backups the one whose time begins so (default: the newest)')
    .addHelpText(
      'after',
      examples(
        'pullbook restore book-2026-03-14 --book restored',
        'pullbook restore /disk/backup --at 2026-03-14 --book restored --json',
      ),
    )
    .action(async (from: string, options: { at?: string }, own: Command) => {
      const shared = context.shared(own);
      const { restoreBook } = await import('@pullbook/workshop');
      const report = valueOrRefusal(await restoreBook(from, shared.bookFolder, options.at ?? null));
      const { pulls, combinations, trials, madeAt, missingOriginals } = report;
      context.answer(shared, report, () => [
        `Restored ${counted(pulls, 'pull')}, ${counted(combinations, 'combination')} and ${counted(trials, 'trial')} to ${report.folder}${madeAt === null ? '' : `, as they were ${madeAt}`}.`,
        ...missingOriginals.map(
          ({ name, hash }) => `The original of "${name}" (${hash}) is not in the backup whole.`,
        ),
      ]);
    });
}
