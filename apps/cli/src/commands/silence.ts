import type { SilencedKind } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

type SilenceOptions = Partial<Record<SilencedKind, string>> & { reason?: string; speak?: boolean };

export function addSilenceCommand(program: Command, context: Context): void {
  withShared(program.command('silence <rule>'))
    .description('silence a rule for one thing, with the reason; what it says there stays to be read')
    .option('--pull <id>', 'a pull')
    .option('--trial <id>', 'a trial')
    .option('--combination <id>', 'a combination')
    .option('--session <id>', 'a session')
    .option('--reason <text>', 'what is known of the thing that the rule does not know')
    .option('--speak', 'let it speak again')
    .addHelpText(
      'after',
      examples(
        'pullbook silence V13 --pull 3f2a --reason "toothed belt, it cannot slip"',
        'pullbook silence V13 --pull 3f2a --speak',
      ),
    )
    .action(async (rule: string, options: SilenceOptions, own: Command) => {
      const shared = context.shared(own);
      const { letRuleSpeak, SILENCED_KINDS, silenceRule } = await import('@pullbook/workshop');
      const kinds = SILENCED_KINDS.filter((kind) => options[kind] !== undefined);
      const [kind] = kinds;
      if (kind === undefined || kinds.length > 1)
        own.error('error: say for what: one of --pull, --trial, --combination, --session.');
      const asked = { rule, kind: kind!, given: options[kind!]!, reason: options.reason ?? '' };
      const silenced = valueOrRefusal(
        await withBook(shared, { create: false }, (book) =>
          options.speak ? letRuleSpeak(book, asked) : silenceRule(book, asked),
        ),
      );
      const { ruleId, subject, reason, at } = silenced;
      const speaks = options.speak === true;
      context.answer(shared, { schemaVersion: 1, ruleId, subject, reason, at, speaks }, () => [
        speaks
          ? `${ruleId} speaks again of the ${kind} ${asked.given}.`
          : `Silenced ${ruleId} for the ${kind} ${asked.given}: ${reason}`,
      ]);
    });
}
