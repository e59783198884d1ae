import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { counted } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addMergeCommand(program: Command, context: Context): void {
  withShared(program.command('merge <other>'))
    .description('bring everything of another book into this one; the other is only read')
    .option('--dry-run', 'say what would come in, and write nothing')
    .addHelpText(
      'after',
      examples('pullbook merge laptop/book --dry-run', 'pullbook merge laptop/book --json'),
    )
    .action(async (other: string, options: { dryRun?: boolean }, own: Command) => {
      const shared = context.shared(own);
      const { edgeRemarks, mergeIntoBook } = await import('@pullbook/workshop');
      const merged = await withBook(shared, { create: false }, (book) =>
        mergeIntoBook(book, other, { dryRun: options.dryRun === true }),
      );
      const report = valueOrRefusal(merged);
      const remarks = edgeRemarks(merged.remarks, null, shared.wordsIn());
      context.answer(shared, { schemaVersion: 1, ...report, remarks }, () => {
        const came = Object.entries(report.added).map(([kind, count]) => counted(count, kind));
        const verb = report.dryRun ? 'Would come in' : 'Came in';
        return [
          `${verb} from "${report.other.name}": ${came.length === 0 ? 'nothing new' : came.join(', ')}; ${counted(report.taken.length, 'thing')} brought up to date.`,
          ...merged.remarks.map(({ level, message }) => `${level}: ${message}`),
        ];
      });
    });
}
