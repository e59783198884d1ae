import { type Command, Option } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

interface AudienceOptions {
  who?: string;
  notBefore?: string;
  reason?: string;
}

export function addAudienceCommand(program: Command, context: Context): void {
  withShared(program.command('audience <id>'))
    .description('who may see a pull or a trial outside the book')
    .addOption(
      new Option('--who <who>', 'shop: it never leaves; customer: for whose engine it is; everyone').choices([
        'shop',
        'customer',
        'everyone',
      ]),
    )
    .option('--not-before <day>', 'not published before this day, such as 2026-05-03; "none" takes it back')
    .option('--reason <text>', 'why, for the log')
    .addHelpText(
      'after',
      examples(
        'pullbook audience 12ab --who customer',
        'pullbook audience "What does the longer cam add?" --who everyone --not-before 2026-05-03',
      ),
    )
    .action(async (id: string, { who, notBefore, reason }: AudienceOptions, own: Command) => {
      const shared = context.shared(own);
      const { audienceWords } = await import('@pullbook/views');
      const { setAudience } = await import('@pullbook/workshop');
      const set = valueOrRefusal(
        await withBook(shared, { create: false }, (book) =>
          setAudience(book, id, { who, notBefore }, reason ?? ''),
        ),
      );
      context.answer(shared, set, () => [
        `${set.kind === 'trial' ? 'Trial' : 'Pull'} ${set.id.slice(0, 8)} may be seen by ${audienceWords(set.audience)}.`,
      ]);
    });
}
