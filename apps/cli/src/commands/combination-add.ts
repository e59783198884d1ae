import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Combination, LineToChange, PartChange } from '@pullbook/core/combination';
import type { Book } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { remarkLines } from '../print/remarks.ts';
import { Refusal, valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';
import { changeLines, type LineOptions, linesFrom, withLineOptions } from '../sheet-line-options.ts';

interface AddOptions extends LineOptions {
  from?: string;
  name?: string;
  engine?: string;
  madeFrom?: string;
  package?: string[];
}

/** A combination from its sheet, or the same as another but for some lines. */
export function addCombinationAdd(parent: Command, context: Context): void {
  withLineOptions(
    withShared(parent.command('add [sheet]'))
      .description(
        'put a combination into the book: from its sheet (YAML or JSON), or the same as another, but ...',
      )
      .option(
        '--from <id>',
        'the same as this combination but for the lines that are set; its packages come along',
      )
      .option('--name <name>', 'name of the new combination, with --from')
      .option('--engine <name>', 'engine it is built on: id or name; a new name makes a new engine')
      .option('--made-from <id>', 'combination that a sheet was made from by a change')
      .option(
        '--package <name...>',
        'packages fitted: id or name (default: those of the one it was made from)',
      ),
  )
    .addHelpText(
      'after',
      examples(
        'pullbook combination add base-cam.yaml --engine "Hill-climb six"',
        'pullbook combination add --from "Base cam" --name "Longer cam" --set "cam.profile=longer cam" --set "cam.durationIntake=284 deg (data sheet)"',
        'pullbook combination add --from "Base cam" --name "Ported" --flow-intake flow.csv --set "heads.flowIntake.testPressure=28 inH2O"',
      ),
    )
    .action(async (path: string | undefined, options: AddOptions, own: Command) => {
      const shared = context.shared(own);
      const { addCombinationFromText, edgeRemarks } = await import('@pullbook/workshop');
      const lines = await linesFrom(options);
      const file = path === undefined ? null : basename(path);
      const done = await withBook(shared, { create: true }, async (book) => {
        const sheet = await sheetToAdd(book, path, options, lines);
        const engines = await book.engines();
        const { engine } = options;
        const isId = engine !== undefined && engines.some((one) => one.id.startsWith(engine));
        const added = await addCombinationFromText(book, {
          sheetText: sheet.sheetText,
          sheetName: file ?? undefined,
          ...(isId ? { engineId: engine } : { engineName: engine }),
          madeFromId: sheet.from?.id ?? options.madeFrom,
          packageIds: options.package,
        });
        return { added, changes: sheet.changes };
      });
      const { id, name } = valueOrRefusal(done.added);
      const remarks = edgeRemarks(done.added.remarks, file, shared.wordsIn());
      context.answer(shared, { id, name, changes: done.changes, remarks }, () => [
        `Added combination ${id.slice(0, 8)}.`,
        ...(done.changes === null ? [] : changeLines(done.changes)),
        ...remarkLines(remarks, context),
      ]);
    });
}

async function sheetToAdd(
  book: Book,
  path: string | undefined,
  options: AddOptions,
  lines: LineToChange[],
): Promise<{ sheetText: string; from: Combination | null; changes: PartChange[] | null }> {
  const { sheetSameBut } = await import('@pullbook/workshop');
  if (path !== undefined) {
    if (options.from !== undefined || options.name !== undefined || lines.length > 0)
      throw new Refusal(
        'sheet-and-lines',
        'Give a sheet, or --from with the lines that change, not both. In a sheet the lines are written in it.',
      );
    return { sheetText: await readFile(path, 'utf8'), from: null, changes: null };
  }
  if (options.from === undefined)
    throw new Refusal(
      'no-sheet',
      'Give the file of a sheet, or the combination it is the same as: --from "Base cam".',
    );
  if (options.name === undefined)
    throw new Refusal(
      'name-missing',
      'Give the new combination a name that says what was changed: --name "Longer cam".',
    );
  const same = await sheetSameBut(book, { fromId: options.from, name: options.name, lines });
  return valueOrRefusal(same);
}
