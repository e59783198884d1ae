import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { type PullOptions, pullDetailsOf, withPullOptions } from '../pull-options.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';
import { type TreatmentOptions, treatmentOf, withTreatmentOptions } from '../treatment-options.ts';

interface AmendOptions extends PullOptions, TreatmentOptions {
  reason: string;
}

export function addAmendCommand(program: Command, context: Context): void {
  const command = withShared(program.command('amend <pull>'))
    .description(
      'mend what was written down about a pull, or how it is read; what was measured never changes',
    )
    .requiredOption('--reason <text>', 'what was entered wrong, or what became known');
  withTreatmentOptions(withPullOptions(command))
    .addHelpText(
      'after',
      examples(
        'pullbook amend 3f2a --combination "Longer cam" --reason "was filed under the base cam"',
        'pullbook amend 3f2a --pressure 98.2kPa --temperature 30C --humidity 45% --reason "weather found on the sheet"',
        'pullbook amend 3f2a --lag "lambda=0.3s" --reason "the probe sits far down the pipe"',
        'pullbook amend 3f2a --window found --bin adapted --reason "read as it comes again"',
      ),
    )
    .action(async (id: string, options: AmendOptions, own: Command) => {
      const shared = context.shared(own);
      const { amendPull, pullDetailsFromText } = await import('@pullbook/workshop');
      const said = { ...pullDetailsOf(options), treatment: treatmentOf(options) };
      const details = valueOrRefusal(pullDetailsFromText(said, new Date().toISOString()));
      const amended = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => amendPull(book, id, details, options.reason)),
      );
      context.answer(shared, amended, () => [`Amended pull ${amended.id.slice(0, 8)}.`]);
    });
}
