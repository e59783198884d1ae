import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { combinationLines } from '../print/pages.ts';
import { remarkLines } from '../print/remarks.ts';
import { erratumLines } from '../print/stale.ts';
import { table } from '../print/table.ts';
import { Refusal, valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';
import { changeLines, type LineOptions, linesFrom, withLineOptions } from '../sheet-line-options.ts';
import { addCombinationAdd } from './combination-add.ts';

export function addCombinationCommands(program: Command, context: Context): void {
  const parent = program
    .command('combination')
    .description('the hardware as built: add, amend, show, compare two, the form of a sheet');
  addCombinationAdd(parent, context);
  addAmend(parent, context);
  addCheck(parent, context);
  addShow(parent, context);
  addDiff(parent, context);
  addSchema(parent, context);
}

interface AmendOptions extends LineOptions {
  reason: string;
}

function addAmend(parent: Command, context: Context): void {
  withLineOptions(
    withShared(parent.command('amend <id> [sheet]'))
      .description('mend the sheet of a combination: better knowledge of the same hardware')
      .requiredOption('--reason <text>', 'what was entered wrong, or what became known'),
  )
    .addHelpText(
      'after',
      examples(
        'pullbook combination amend 77b0 base-cam.yaml --reason "stroke measured anew"',
        'pullbook combination amend 77b0 --set "shortBlock.stroke=88.1 mm (measured)" --reason "stroke measured anew"',
      ),
    )
    .action(async (id: string, path: string | undefined, options: AmendOptions, own: Command) => {
      const shared = context.shared(own);
      const { amendCombination, edgeRemarks, sheetSameBut, staleAfter } = await import('@pullbook/workshop');
      const lines = await linesFrom(options);
      if ((path === undefined) === (lines.length === 0))
        throw new Refusal(
          'sheet-or-lines',
          'Give the mended sheet, or the lines to mend with --set, and not both.',
        );
      const file = path === undefined ? null : basename(path);
      const { amended, value, errata } = await withBook(shared, { create: false }, async (book) => {
        const sheetText =
          path === undefined
            ? valueOrRefusal(await sheetSameBut(book, { fromId: id, lines })).sheetText
            : await readFile(path, 'utf8');
        const done = await amendCombination(book, id, sheetText, options.reason, file ?? undefined);
        const mended = valueOrRefusal(done);
        const stale = await staleAfter(book, { combinationIds: [mended.id] }, shared.view);
        return { amended: done, value: mended, errata: stale };
      });
      const remarks = edgeRemarks(amended.remarks, file, shared.wordsIn());
      context.answer(shared, { ...value, remarks, errata }, () => [
        `Amended combination ${value.id.slice(0, 8)}, now revision ${value.revision}.`,
        ...remarkLines(remarks, context),
        ...erratumLines(errata, context),
      ]);
    });
}

function addCheck(parent: Command, context: Context): void {
  withShared(parent.command('check <sheet>'))
    .description('look at a sheet without keeping it: what cannot be read, and what it changes of another')
    .option('--from <id>', 'combination it is made from: the changes are listed as they will read')
    .addHelpText('after', examples('pullbook combination check longer-cam.yaml --from "Base cam"'))
    .action(async (path: string, options: { from?: string }, own: Command) => {
      const shared = context.shared(own);
      const { lookAtSheet } = await import('@pullbook/workshop');
      const sheetText = await readFile(path, 'utf8');
      const look = valueOrRefusal(
        options.from === undefined
          ? await lookAtSheet(null, sheetText, shared.wordsIn())
          : await withBook(shared, { create: false }, (book) =>
              lookAtSheet(book, sheetText, shared.wordsIn(), options.from),
            ),
      );
      if (!look.complete) context.exitCode = 1;
      context.answer(shared, { schemaVersion: 1, ...look }, () => [
        look.complete ? `${basename(path)} can be kept as it is.` : `${basename(path)} cannot be kept yet.`,
        ...(look.changes === null ? [] : changeLines(look.changes)),
        ...look.remarks.map(({ level, text, line }) =>
          line === undefined ? `${level}: ${text}` : `line ${line}, ${level}: ${text}`,
        ),
      ]);
    });
}

function addSchema(parent: Command, context: Context): void {
  withShared(parent.command('schema'))
    .description('the form of a sheet as a JSON Schema (draft 2020-12)')
    .addHelpText('after', examples('pullbook combination schema > combination.schema.json'))
    .action(async (_options, own: Command) => {
      const shared = context.shared(own);
      const { sheetSchema } = await import('@pullbook/core/combination');
      const schema = sheetSchema();
      context.answer(shared, schema, () => [JSON.stringify(schema, null, 2)]);
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
