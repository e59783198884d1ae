import type { ExportReport } from '@pullbook/workshop';
import { type Command, Option } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { counted } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addExportCommand(program: Command, context: Context): void {
  withShared(program.command('export'))
    .description('write the whole book as open files: JSON, CSV with its metadata, original bytes')
    .requiredOption('--to <folder>', 'new folder to write')
    .addOption(
      new Option('--for <reader>', 'leave out what they may not see; of the shop: everything')
        .choices(['shop', 'customer', 'everyone'])
        .default('shop'),
    )
    .option('--replace', 'put it in the place of an earlier export')
    .addHelpText(
      'after',
      examples(
        'pullbook export --to book-2026-03-14',
        'pullbook export --to to-publish --for everyone',
        'pullbook export --to latest --replace --json',
      ),
    )
    .action(
      async (
        options: { to: string; for: 'shop' | 'customer' | 'everyone'; replace?: boolean },
        own: Command,
      ) => {
        const shared = context.shared(own);
        const { exportBook } = await import('@pullbook/workshop');
        const written = await withBook(shared, { create: false }, (book) =>
          exportBook(book, options.to, { replace: options.replace, reader: options.for }).catch(
            (trouble: unknown) => {
              throw fileTrouble(trouble, options.to);
            },
          ),
        );
        const report = valueOrRefusal(written);
        context.answer(shared, report, () => [
          `Wrote ${counted(report.files, 'file')} with ${counted(report.pulls, 'pull')} to ${report.folder}.`,
          ...(report.reader === 'shop' ? [] : [leftOutLine(report.leftOut)]),
          ...(report.privateThings > 0
            ? [
                `It holds ${counted(report.privateThings, 'thing')} not for everyone: give it on with care, or use --for everyone.`,
              ]
            : []),
        ]);
      },
    );
}

function leftOutLine({ pulls, trials, combinations, files }: ExportReport['leftOut']): string {
  const counts = [
    counted(pulls, 'pull'),
    counted(trials, 'trial'),
    counted(combinations, 'combination'),
    counted(files, 'original file'),
  ];
  return `Left out: ${counts.join(', ')}; the log, the settings and the layouts too.`;
}
