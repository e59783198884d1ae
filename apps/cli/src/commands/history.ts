import type { HistoryStep } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { countValue } from '../option-values.ts';
import { erratumLines } from '../print/stale.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addHistoryCommands(program: Command, context: Context): void {
  addHistory(program, context);
  addUndo(program, context);
}

function addHistory(program: Command, context: Context): void {
  withShared(program.command('history'))
    .description('what was done to the book and why, the last act first')
    .option('--of <id>', 'only what was done to this pull, trial or combination')
    .option('--before <entry>', 'only what came before this entry: its number', countValue)
    .addHelpText('after', examples('pullbook history', 'pullbook history --of 3f2a --json'))
    .action(async (options: { of?: string; before?: number }, own: Command) => {
      const shared = context.shared(own);
      const { history, subjectNamed } = await import('@pullbook/workshop');
      const page = await withBook(shared, { create: false }, async (book) => {
        const subject = options.of && valueOrRefusal(await subjectNamed(book, options.of));
        return history(book, shared.view, {
          ...(options.before === undefined ? {} : { before: options.before }),
          ...(subject ? { subject } : {}),
        });
      });
      context.answer(shared, { schemaVersion: 1, ...page }, () => [
        ...page.steps.flatMap((step) => stepLines(step, context)),
        ...(page.next === null ? [] : ['', `More: pullbook history --before ${page.next}`]),
      ]);
    });
}

function addUndo(program: Command, context: Context): void {
  withShared(program.command('undo [entry]'))
    .description('take back the last act, or the one named; nothing is deleted, and an undo can be undone')
    .addHelpText('after', examples('pullbook undo', 'pullbook undo 42', 'pullbook undo 42 --json'))
    .action(async (entry: string | undefined, _options, own: Command) => {
      const shared = context.shared(own);
      const { staleAfterStep, undo } = await import('@pullbook/workshop');
      const { step, errata } = await withBook(shared, { create: false }, async (book) => {
        const undone = valueOrRefusal(await undo(book, entry ?? null, shared.view));
        return { step: undone, errata: await staleAfterStep(book, undone, shared.view) };
      });
      context.answer(shared, { schemaVersion: 1, step, errata }, () => [
        `${step.words}.`,
        ...changeLines(step),
        ...erratumLines(errata, context),
        `To have it back: pullbook undo ${numberOf(step)}`,
      ]);
    });
}

/** The number of an entry in its own book stands last in its global name. */
const numberOf = ({ uid }: HistoryStep): string => uid.slice(uid.lastIndexOf('/') + 1);

const changeLines = ({ changes }: HistoryStep): string[] =>
  changes.map(({ label, before, after }) => `    ${label}: ${before || '–'} → ${after || '–'}`);

function stepLines(step: HistoryStep, context: Context): string[] {
  const { bold, dim } = context.colours;
  const state = step.isUndone ? ' (undone)' : '';
  const why = step.reason === '' ? '' : dim(`  ${step.reason}`);
  const at = step.at.slice(0, 16).replace('T', ' ');
  return [`${numberOf(step).padStart(5)}  ${at}  ${bold(step.words)}${state}${why}`, ...changeLines(step)];
}
