import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import {
  degreesOfFreedomValue,
  idsValue,
  shareAboveNoneValue,
  shareAnHourValue,
  shareValue,
  speedsValue,
  windowValue,
} from '../option-values.ts';
import { compareLines } from '../print/compare-lines.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

interface CompareOptions {
  baseline: string[];
  changed: string[];
  correction?: string;
  window?: [number, number];
  at?: number[];
  worthwhile?: number;
  noise?: number;
  noiseDegreesOfFreedom?: number;
  setUpNoise?: number;
  driftNoise?: number;
}

export function addCompareCommand(program: Command, context: Context): void {
  withShared(program.command('compare'))
    .description('what the changed pulls gain over the baseline pulls, and how sure it is')
    .requiredOption('--baseline <ids>', 'pulls of the baseline: id[,id]', idsValue)
    .requiredOption('--changed <ids>', 'pulls after the change: id[,id]', idsValue)
    .option(
      '--correction <standard>',
      'observed, sae-j1349, sae-j607, iso-1585, din-70020 (default: the shop’s)',
    )
    .option(
      '--window <low-high>',
      'engine speeds of the averages, r/min (default: the common window)',
      windowValue,
    )
    .option('--at <speeds>', 'gain at these engine speeds too, r/min: speed[,speed]', speedsValue)
    .option('--worthwhile <share>', 'smallest gain that matters (default: the shop’s)', shareAboveNoneValue)
    .option(
      '--noise <share>',
      'scatter between pulls, in place of all that the book knows of scatter',
      shareAboveNoneValue,
    )
    .option('--set-up-noise <share>', 'scatter of taking apart and putting together', shareValue)
    .option('--drift-noise <share>', 'scatter of the drift, an hour', shareAnHourValue)
    .option(
      '--noise-degrees-of-freedom <n>',
      'how well the scatter said here is known (default: 20)',
      degreesOfFreedomValue,
    )
    .addHelpText(
      'after',
      examples(
        'pullbook compare --baseline 3f2a,4d10 --changed 5e77',
        'pullbook compare --baseline 3f2a --changed 5e77 --correction observed --window 4000-6500 --json',
        'pullbook compare --baseline 3f2a --changed 5e77 --noise 0.5% --set-up-noise 0.5% --at 4000,5000',
      ),
    )
    .action(async (options: CompareOptions, own: Command) => {
      const shared = context.shared(own);
      const { comparePulls, correctionByName } = await import('@pullbook/workshop');
      const correction =
        options.correction === undefined ? undefined : valueOrRefusal(correctionByName(options.correction));
      const { baseline, changed, worthwhile } = options;
      const compared = await withBook(shared, { create: false }, (book) =>
        comparePulls(book, {
          baseline,
          changed,
          correction,
          windowRpm: options.window ?? null,
          scatter: scatterOf(options, own),
          worthwhile,
          atRpm: options.at,
          wordsIn: shared.wordsIn() ?? undefined,
        }),
      );
      const report = valueOrRefusal(compared);
      context.answer(shared, report, () => compareLines(report, shared, context));
    });
}

/** The scatter said by hand; `undefined` where none is. */
function scatterOf(options: CompareOptions, own: Command) {
  const { noise, setUpNoise, driftNoise, noiseDegreesOfFreedom } = options;
  if (noise === undefined && setUpNoise === undefined && driftNoise === undefined) {
    if (noiseDegreesOfFreedom !== undefined)
      own.error('error: --noise-degrees-of-freedom says how well a scatter is known: say it with --noise.');
    return undefined;
  }
  return {
    pull: noise,
    setUp: setUpNoise,
    driftPerHour: driftNoise,
    degreesOfFreedom: noiseDegreesOfFreedom,
  };
}
