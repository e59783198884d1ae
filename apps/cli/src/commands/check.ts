import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { findingLines } from '../print/findings.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addCheckCommand(program: Command, context: Context): void {
  withShared(program.command('check <id...>'))
    .description('what the rules say of pulls (with their session), trials or combinations')
    .addHelpText(
      'after',
      examples('pullbook check 3f2a', 'pullbook check "Base cam" 12ab', 'pullbook check 3f2a --json'),
    )
    .action(async (ids: string[], _: object, own: Command) => {
      const shared = context.shared(own);
      const { checkThing } = await import('@pullbook/workshop');
      const checked = await withBook(shared, { create: false }, async (book) => {
        const all = [];
        for (const id of ids) all.push(valueOrRefusal(await checkThing(book, id, shared.wordsIn())));
        return all;
      });
      context.answer(shared, { schemaVersion: 1, checked }, () =>
        checked.flatMap(({ kind, name, findings }) => [
          context.colours.bold(`${name} (${kind})`),
          ...(findings.length === 0 ? ['  Nothing stands out.'] : findingLines(findings, context)),
        ]),
      );
    });
}
