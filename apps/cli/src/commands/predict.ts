import type { PredictionReport } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

interface PredictOptions {
  trial: string;
  key: string;
  gain?: string;
  peakPower?: string;
  low: string;
  high: string;
  basis: string;
}

export function addPredictCommand(program: Command, context: Context): void {
  withShared(program.command('predict'))
    .description('keep what you expect of a combination before it is pulled; refused after the fact')
    .requiredOption('--trial <trial>', 'id or question of the trial')
    .requiredOption('--key <key>', 'the combination in it: B')
    .option('--gain <share>', 'gain of average power over the baseline: 3%')
    .option('--peak-power <power>', 'or highest power, with its unit: 520hp')
    .requiredOption('--low <value>', 'low end of the band in which it is to come out')
    .requiredOption('--high <value>', 'high end of it')
    .requiredOption('--basis <text>', 'what it rests on: "flow bench, 4 % more"')
    .addHelpText(
      'after',
      examples(
        'pullbook predict --trial 5e77 --key B --gain 3% --low 1% --high 5% --basis "flow bench, 4 % more"',
        'pullbook predict --trial 5e77 --key B --peak-power 520hp --low 500hp --high 540hp --basis "a guess" --json',
      ),
    )
    .action(async ({ trial, ...said }: PredictOptions, own: Command) => {
      const shared = context.shared(own);
      const { predict, predictionReport } = await import('@pullbook/workshop');
      const kept = await withBook(shared, { create: false }, async (book) => {
        const prediction = valueOrRefusal(await predict(book, trial, said));
        const question = (await book.trial(prediction.trialId))?.question ?? '';
        return predictionReport({ prediction, question, measured: null, inside: null });
      });
      context.answer(shared, kept satisfies PredictionReport, () => [
        `Kept for ${kept.key}, and not altered any more: ${said.gain ?? said.peakPower}, ${said.low} to ${said.high}. It rests on: ${kept.basis}`,
        'A slip is taken back by "pullbook undo", while there is no pull.',
      ]);
    });
}
