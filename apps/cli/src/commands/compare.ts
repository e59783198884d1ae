import type { CompareReport } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { idsValue, windowValue } from '../option-values.ts';
import { figure, peak, percent, window } from '../print/figure.ts';
import { remarkLines } from '../print/remarks.ts';
import { table } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withShared } from '../shared-options.ts';

interface CompareOptions {
  baseline: string[];
  changed: string[];
  correction?: string;
  window?: [number, number];
}

export function addCompareCommand(program: Command, context: Context): void {
  withShared(program.command('compare'))
    .description('what the changed pulls gain over the baseline pulls')
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
    .addHelpText(
      'after',
      examples(
        'pullbook compare --baseline 3f2a,4d10 --changed 5e77',
        'pullbook compare --baseline 3f2a --changed 5e77 --correction observed --window 4000-6500 --json',
      ),
    )
    .action(async (options: CompareOptions, own: Command) => {
      const shared = context.shared(own);
      const { comparePulls, correctionByName } = await import('@pullbook/workshop');
      const correction =
        options.correction === undefined ? undefined : valueOrRefusal(correctionByName(options.correction));
      const { baseline, changed } = options;
      const compared = await withBook(shared, { create: false }, (book) =>
        comparePulls(book, {
          baseline,
          changed,
          correction,
          windowRpm: options.window ?? null,
          wordsIn: shared.wordsIn() ?? undefined,
        }),
      );
      const report = valueOrRefusal(compared);
      context.answer(shared, report, () => reportLines(report, shared, context));
    });
}

/** A table for people shows every so many r/min; all nodes are in the JSON. */
const TABLE_STEP_RPM = 250;

function reportLines(report: CompareReport, { view }: Shared, context: Context): string[] {
  const kilowatts = (value: number | null, sign = false) => figure(value, 'kW', 'power', view, { sign });
  const peakOf = (one: CompareReport['baselinePeak']) =>
    peak(
      {
        figure: one.peakPowerKw,
        unit: 'kW',
        kind: 'power',
        atRpm: one.peakPowerRpm,
        stillClimbing: one.stillClimbing,
      },
      view,
    );
  const shown = report.curve.filter((row) => row.engineSpeedRpm % TABLE_STEP_RPM === 0);
  const differing = report.conditions.filter((one) => one.state !== 'alike');
  return [
    context.colours.bold(
      report.meanGainKw === null
        ? 'No gain can be given: the pulls have no engine speeds in common.'
        : `${kilowatts(report.meanGainKw, true)} (${percent(report.meanGainPercent, view)}) on average, ${window(report.averagesWindowRpm, view)}`,
    ),
    `Standard: ${report.correction.standard}${report.correction.reached ? '' : `, not ${report.correction.asked} as asked`}`,
    `Peaks: ${peakOf(report.baselinePeak)}; changed ${peakOf(report.changedPeak)}`,
    ...(shown.length === 0
      ? []
      : [
          '',
          ...table([
            ['Engine speed', 'Baseline', 'Changed', 'Gain'],
            ...shown.map((row) => [
              figure(row.engineSpeedRpm, 'rpm', 'engineSpeed', view),
              kilowatts(row.baselineKw),
              kilowatts(row.changedKw),
              kilowatts(row.gainKw, true),
            ]),
          ]),
        ]),
    ...(differing.length === 0
      ? []
      : [
          '',
          ...table([
            ['Condition', 'Baseline', 'Changed', 'State'],
            ...differing.map((one) => [one.label, one.baseline ?? '–', one.changed ?? '–', one.state]),
          ]),
        ]),
    ...(report.remarks.length === 0 ? [] : ['', ...remarkLines(report.remarks, context)]),
  ];
}
