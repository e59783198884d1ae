import type { ShownThing } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { enquiryLines } from '../print/enquiry-lines.ts';
import { combinationLines, pullLines, trialLines } from '../print/pages.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addShowCommand(program: Command, context: Context): void {
  withShared(program.command('show <id>'))
    .description('a trial, a pull, a combination or an enquiry: id, its beginning, or name')
    .option(
      '--correction <standard>',
      'look at it in another standard: observed, sae-j1349, sae-j607, iso-1585, din-70020',
    )
    .addHelpText(
      'after',
      examples(
        'pullbook show 3f2a',
        'pullbook show "Base cam"',
        'pullbook show 3f2a --correction observed --json',
      ),
    )
    .action(async (id: string, options: { correction?: string }, own: Command) => {
      const shared = context.shared(own);
      const { correctionByName, showThing } = await import('@pullbook/workshop');
      const correction =
        options.correction === undefined ? undefined : valueOrRefusal(correctionByName(options.correction));
      const shown = await withBook(shared, { create: false }, (book) =>
        showThing(book, id, { ...shared.view, correction }),
      );
      const thing = valueOrRefusal(shown);
      const { page, ...figures } = thing;
      const told = thing.kind === 'enquiry' ? figures : { ...figures, page };
      context.answer(shared, { schemaVersion: 1, ...told }, () => pageLines(thing, context));
    });
}

function pageLines(thing: ShownThing, context: Context): string[] {
  if (thing.kind === 'trial') return trialLines(thing.page, context);
  if (thing.kind === 'pull') return pullLines(thing.page, context);
  if (thing.kind === 'enquiry') return enquiryLines(thing.page, thing.enquiry, context);
  return combinationLines(thing.page, context);
}
