import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { peak } from '../print/figure.ts';
import { remarkLines } from '../print/remarks.ts';
import { type PullOptions, pullDetailsOf, withPullOptions } from '../pull-options.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

interface SummaryOptions extends PullOptions {
  peakPower?: string;
  peakPowerAt?: string;
  peakTorque?: string;
  peakTorqueAt?: string;
  origin: string;
  like?: string;
}

export function addSummaryCommand(program: Command, context: Context): void {
  const command = withShared(program.command('summary'))
    .description('enter a pull of which only the peaks are known, printed or remembered')
    .option('--peak-power <quantity>', '328hp, 245kW')
    .option('--peak-power-at <speed>', '6400rpm')
    .option('--peak-torque <quantity>', '"300 lb-ft", 410Nm')
    .option('--peak-torque-at <speed>', '4500rpm')
    .option(
      '--origin <origin>',
      'remembered, read off a picture, data sheet, measured, assumed',
      'remembered',
    )
    .option('--like <pull>', 'what is not said is as in that pull; "last": the one added last');
  withPullOptions(command)
    .addHelpText(
      'after',
      examples(
        'pullbook summary --name "Before the rebuild" --peak-power 328hp --peak-power-at 6400rpm --combination "Base cam"',
        'pullbook summary --like last --origin measured --peak-power 331hp --peak-power-at 6450rpm',
        'pullbook summary --peak-power 245kW --origin "read off a picture" --corrected sae-j607 --json',
      ),
    )
    .action(async (options: SummaryOptions, own: Command) => {
      const shared = context.shared(own);
      const { addSummaryPull, edgeRemarks, pullDetailsFromText } = await import('@pullbook/workshop');
      const details = valueOrRefusal(pullDetailsFromText(pullDetailsOf(options), new Date().toISOString()));
      const summary = {
        peakPower: options.peakPower,
        peakPowerRpm: options.peakPowerAt,
        peakTorque: options.peakTorque,
        peakTorqueRpm: options.peakTorqueAt,
      };
      const added = await withBook(shared, { create: true }, (book) =>
        addSummaryPull(book, { summary, origin: options.origin, details, like: options.like }),
      );
      const pull = valueOrRefusal(added);
      const remarks = edgeRemarks(added.remarks, null, shared.wordsIn());
      context.answer(shared, { schemaVersion: 1, pulls: [pull], remarks }, () => [
        `${pull.id.slice(0, 8)}  ${pull.name}: ${peak({ figure: pull.peakPowerKw, unit: 'kW', kind: 'power', atRpm: pull.peakPowerRpm }, shared.view)}`,
        ...remarkLines(remarks, context),
      ]);
    });
}
