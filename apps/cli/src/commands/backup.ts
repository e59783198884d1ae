import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { counted } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

/** `backup`, and `backup check`. */
export function addBackupCommands(program: Command, context: Context): void {
  const backup = withShared(program.command('backup'))
    .description(
      'copy the book, checked, while others go on working with it; of the earlier copies all of a week stay, then one a week, then one a month',
    )
    .option('--to <folder>', 'folder for the backups (default: the one of the settings)')
    .option('--keep-all', 'take none of the earlier copies away')
    .addHelpText(
      'after',
      examples(
        'pullbook backup --to /disk/backup',
        'pullbook backup --json',
        'pullbook backup check /disk/backup',
      ),
    )
    .action(async (options: { to?: string; keepAll?: boolean }, own: Command) => {
      const shared = context.shared(own);
      const { backUp } = await import('@pullbook/workshop');
      const report = valueOrRefusal(
        await withBook(shared, { create: false }, (book) =>
          backUp(book, options.to ?? null, new Date(), { keepAll: options.keepAll === true }),
        ),
      );
      context.answer(shared, { schemaVersion: 1, ...report }, () => [
        `Backed up ${counted(report.pulls, 'pull')} and ${counted(report.files, 'original file')} to ${report.folder}.`,
        ...report.missingOriginals.map(
          ({ name, hash }) => `The book no longer has the original of "${name}" (${hash}) whole.`,
        ),
        ...(report.takenAway.length === 0
          ? []
          : [`${report.takenAway.length} of the earlier copies taken away, as newer ones stand for them.`]),
        `To look through it: pullbook backup check ${report.folder}`,
      ]);
    });
  addCheck(backup, context);
}

function addCheck(backup: Command, context: Context): void {
  withShared(backup.command('check <folder>'))
    .description('read all of a backup: every page, every curve, every original')
    .option('--at <time>', 'of several the one whose time begins so (default: the newest)')
    .addHelpText('after', examples('pullbook backup check /disk/backup --at 2026-03-14'))
    .action(async (folder: string, options: { at?: string }, own: Command) => {
      const shared = context.shared(own);
      const { checkBackupFolder } = await import('@pullbook/workshop');
      const report = await checkBackupFolder(folder, options.at ?? null);
      if (report.faults.length > 0) context.exitCode = 1;
      context.answer(shared, { schemaVersion: 1, ...report }, () => [
        `The backup of ${report.madeAt}: ${counted(report.pulls, 'pull')}, ${counted(report.files, 'original file')}.`,
        ...(report.faults.length === 0
          ? ['All of it is whole.']
          : report.faults.map((fault) => `not whole: ${fault}`)),
      ]);
    });
}
