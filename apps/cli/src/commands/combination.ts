import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { combinationLines } from '../print/pages.ts';
import { remarkLines } from '../print/remarks.ts';
import { table } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addCombinationCommands(program: Command, context: Context): void {
  const parent = program
    .command('combination')
    .description('the hardware as built: add, amend, show, compare two');
  addAdd(parent, context);
  addAmend(parent, context);
  addShow(parent, context);
  addDiff(parent, context);
}

function addAdd(parent: Command, context: Context): void {
  withShared(parent.command('add <sheet>'))
    .description('put a combination into the book from its sheet (YAML or JSON)')
    .option('--engine <name>', 'engine it is built on: id or name; a new name makes a new engine')
    .option('--made-from <id>', 'combination it was made from by a change')
    .option('--package <name...>', 'packages fitted: id or name (default: those of the one it was made from)')
    .addHelpText(
      'after',
      examples(
        'pullbook combination add base-cam.yaml --engine "Hill-climb six"',
        'pullbook combination add longer-cam.yaml --made-from "Base cam"',
      ),
    )
    .action(
      async (
        path: string,
        options: { engine?: string; madeFrom?: string; package?: string[] },
        own: Command,
      ) => {
        const shared = context.shared(own);
        const { addCombinationFromText, edgeRemarks } = await import('@pullbook/workshop');
        const sheetText = await readFile(path, 'utf8');
        const added = await withBook(shared, { create: true }, async (book) => {
          const engines = await book.engines();
          const { engine } = options;
          const isId = engine !== undefined && engines.some((one) => one.id.startsWith(engine));
          return addCombinationFromText(book, {
            sheetText,
            sheetName: basename(path),
            ...(isId ? { engineId: engine } : { engineName: engine }),
            madeFromId: options.madeFrom,
            packageIds: options.package,
          });
        });
        const { id } = valueOrRefusal(added);
        const remarks = edgeRemarks(added.remarks, basename(path));
        context.answer(shared, { id, remarks }, () => [
          `Added combination ${id.slice(0, 8)}.`,
          ...remarkLines(remarks, context),
        ]);
      },
    );
}

function addAmend(parent: Command, context: Context): void {
  withShared(parent.command('amend <id> <sheet>'))
    .description('mend the sheet of a combination: better knowledge of the same hardware')
    .requiredOption('--reason <text>', 'what was entered wrong, or what became known')
    .addHelpText(
      'after',
      examples('pullbook combination amend 77b0 base-cam.yaml --reason "stroke measured anew"'),
    )
    .action(async (id: string, path: string, options: { reason: string }, own: Command) => {
      const shared = context.shared(own);
      const { amendCombination, edgeRemarks } = await import('@pullbook/workshop');
      const sheetText = await readFile(path, 'utf8');
      const amended = await withBook(shared, { create: false }, (book) =>
        amendCombination(book, id, sheetText, options.reason, basename(path)),
      );
      const value = valueOrRefusal(amended);
      const remarks = edgeRemarks(amended.remarks, basename(path));
      context.answer(shared, { ...value, remarks }, () => [
        `Amended combination ${value.id.slice(0, 8)}, now revision ${value.revision}.`,
        ...remarkLines(remarks, context),
      ]);
    });
}

function addShow(parent: Command, context: Context): void {
  withShared(parent.command('show <id>'))
    .description('the sheet, what follows from it, its pulls')
    .option('--yaml', 'print the sheet as YAML, to copy and edit')
    .addHelpText(
      'after',
      examples(
        'pullbook combination show 77b0',
        'pullbook combination show "Base cam" --yaml > longer-cam.yaml',
      ),
    )
    .action(async (id: string, options: { yaml?: boolean }, own: Command) => {
      const shared = context.shared(own);
      const { combinationPageOf } = await import('@pullbook/workshop');
      const page = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => combinationPageOf(book, id, shared.view)),
      );
      context.answer(shared, { schemaVersion: 1, ...page }, () =>
        options.yaml ? [page.sheetText.trimEnd()] : combinationLines(page, context),
      );
    });
}

function addDiff(parent: Command, context: Context): void {
  withShared(parent.command('diff <before> <after>'))
    .description('what changed between two combinations, line by line')
    .addHelpText('after', examples('pullbook combination diff "Base cam" "Longer cam"'))
    .action(async (before: string, after: string, _options, own: Command) => {
      const shared = context.shared(own);
      const { changesBetween } = await import('@pullbook/workshop');
      const found = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => changesBetween(book, before, after)),
      );
      const json = {
        schemaVersion: 1,
        before: { id: found.before.id, name: found.before.name },
        after: { id: found.after.id, name: found.after.name },
        changes: found.changes,
      };
      context.answer(shared, json, () =>
        found.changes.length === 0
          ? ['Nothing on the sheets differs.']
          : table([
              ['Line', found.before.name, found.after.name, 'Package'],
              ...found.changes.map((one) => [
                one.label,
                one.before ?? '–',
                one.after ?? '–',
                one.packageName ?? '',
              ]),
            ]),
      );
    });
}
