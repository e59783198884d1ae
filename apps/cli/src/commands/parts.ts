import { readFile, writeFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { partsPage } from '@pullbook/views/reach';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { remarkLines } from '../print/remarks.ts';
import { table } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withBookIfThere, withShared } from '../shared-options.ts';

export function addPartsCommands(program: Command, context: Context): void {
  const parent = program
    .command('parts')
    .description(
      'what the shop can buy, with its cost classes: pulleys, coolers, fuels, injectors … for "pullbook reach"',
    );
  addShow(parent, context);
  addExport(parent, context);
  addImport(parent, context);
  addReset(parent, context);
}

function addShow(parent: Command, context: Context): void {
  withShared(parent.command('show'))
    .description('the parts list: the shop’s own, else what is usual')
    .addHelpText('after', examples('pullbook parts show', 'pullbook parts show --json'))
    .action(async (_: object, own: Command) => {
      const shared = context.shared(own);
      const { partsListOf, partsReport } = await import('@pullbook/workshop');
      const { report, list } = await withBookIfThere(shared, async (book) => ({
        report: await partsReport(book),
        list: await partsListOf(book),
      }));
      context.answer(shared, report, () => {
        const { bold } = context.colours;
        const page = partsPage(list, shared.view);
        return [
          bold(report.isOwn ? 'The shop’s own parts list' : 'What is usual; the shop has no list of its own'),
          ...page.kinds.flatMap(({ title, rows }) => [
            '',
            bold(title),
            ...(rows.length === 0
              ? ['  none']
              : table(
                  [
                    ['', 'Cost class', 'From'],
                    ...rows.map(({ text, cost, from }) => [text, String(cost), from]),
                  ],
                  '  ',
                )),
          ]),
          '',
          bold('Cost classes'),
          ...page.costClasses.map(({ cost, text }) => `  ${cost}  ${text}`),
        ];
      });
    });
}

function addExport(parent: Command, context: Context): void {
  withShared(parent.command('export <file.yaml>'))
    .description('write the parts list as a file that can be edited and read again')
    .addHelpText('after', examples('pullbook parts export parts.yaml'))
    .action(async (given: string, _: object, own: Command) => {
      const shared = context.shared(own);
      const { partsReport } = await import('@pullbook/workshop');
      const { text, isOwn } = await withBookIfThere(shared, (book) => partsReport(book));
      const file = resolve(given);
      await writeFile(file, text).catch((trouble: unknown) => {
        throw fileTrouble(trouble, file);
      });
      context.answer(shared, { schemaVersion: 1, file, isOwn }, () => [`Wrote the parts list to ${file}.`]);
    });
}

function addImport(parent: Command, context: Context): void {
  withShared(parent.command('import <file>'))
    .description('take the lists of a parts file in place of the shop’s; those it leaves out stay')
    .addHelpText(
      'after',
      examples('pullbook parts import parts.yaml', 'pullbook parts import samples/reach/parts.yaml --json'),
    )
    .action(async (given: string, _: object, own: Command) => {
      const shared = context.shared(own);
      const { changePartsList, edgeRemarks } = await import('@pullbook/workshop');
      const file = resolve(given);
      const text = await readFile(file, 'utf8').catch((trouble: unknown) => {
        throw fileTrouble(trouble, file);
      });
      const changed = await withBook(shared, { create: true }, (book) =>
        changePartsList(book, text, { fileName: basename(file) }),
      );
      const report = valueOrRefusal(changed);
      const remarks = edgeRemarks(changed.remarks, basename(file), shared.wordsIn());
      context.answer(shared, { ...report, remarks }, () => [
        `Took the lists of ${file}. "pullbook parts show" lists them; "pullbook undo" takes it back.`,
        ...remarkLines(remarks, context),
      ]);
    });
}

function addReset(parent: Command, context: Context): void {
  withShared(parent.command('reset'))
    .description('forget the shop’s own list: what is usual stands again')
    .addHelpText('after', examples('pullbook parts reset'))
    .action(async (_: object, own: Command) => {
      const shared = context.shared(own);
      const { resetPartsList } = await import('@pullbook/workshop');
      const report = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => resetPartsList(book)),
      );
      context.answer(shared, report, () => ['What is usual stands again.']);
    });
}
