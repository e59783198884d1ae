import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { PlanReport } from '@pullbook/workshop';
import { type Command, Option } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { countValue } from '../option-values.ts';
import { figure, number } from '../print/figure.ts';
import { remarkLines } from '../print/remarks.ts';
import { counted, table } from '../print/table.ts';
import { Refusal, valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withShared } from '../shared-options.ts';

interface PlanOptions {
  trial: string;
  gain?: string;
  odds?: string;
  looks?: number;
  most?: number;
  notes?: string;
  keep?: boolean;
  forget?: boolean;
  sheet?: string;
  paper?: 'a4' | 'letter';
}

export function addPlanCommand(program: Command, context: Context): void {
  withShared(program.command('plan'))
    .description('which pulls to make, in which order, to see a gain of a given size')
    .requiredOption('--trial <trial>', 'id or question of the trial')
    .option(
      '--gain <gain>',
      'gain to be seen: 2 %, or 8hp (default: as kept, else the smallest gain that matters to the shop)',
    )
    .option('--odds <odds>', 'chance to see it, 0.5 to 0.99 (default: as kept, else 0.8)')
    .option('--looks <count>', 'how often the verdict is looked at, 1 to 3 (default 2)', countValue)
    .option('--most <count>', 'most pulls still to make (default 16)', countValue)
    .option('--keep', 'keep the plan with the trial')
    .option('--notes <text>', 'words kept with the plan and printed on its sheet (with --keep)')
    .option('--forget', 'take the kept plan off the trial')
    .option('--sheet <file.html>', 'write the pull sheet, to be printed: one HTML file')
    .addOption(
      new Option('--paper <paper>', 'of the sheet (default: letter with US units, else A4)').choices([
        'a4',
        'letter',
      ]),
    )
    .addHelpText(
      'after',
      examples(
        'pullbook plan --trial 12ab --gain 2%',
        'pullbook plan --trial 12ab --gain 8hp --odds 0.9 --keep --sheet sheet.html',
        'pullbook plan --trial 12ab --json',
        'pullbook plan --trial 12ab --forget',
      ),
    )
    .action(async (options: PlanOptions, own: Command) => {
      const shared = context.shared(own);
      if (options.forget) await forget(options, shared, context);
      else await plan(options, shared, context);
    });
}

async function forget(options: PlanOptions, shared: Shared, context: Context): Promise<void> {
  const { keep, gain, sheet, notes } = options;
  if (keep || [gain, sheet, notes].some((one) => one !== undefined)) {
    throw new Refusal('forget-alone', 'Give --forget alone: it takes the kept plan off the trial.');
  }
  const { forgetPlan } = await import('@pullbook/workshop');
  const done = valueOrRefusal(
    await withBook(shared, { create: false }, (book) => forgetPlan(book, options.trial)),
  );
  context.answer(shared, done, () => [`Trial ${done.id.slice(0, 8)} has no plan any more.`]);
}

async function plan(options: PlanOptions, shared: Shared, context: Context): Promise<void> {
  const { keepPlan, planOf, pullSheetOf } = await import('@pullbook/workshop');
  const { trial, gain, odds, looks, most: maximumPulls, notes } = options;
  if (notes !== undefined && !options.keep) {
    throw new Refusal('notes-of-no-plan', 'Notes are kept with the plan. Give --keep with --notes.');
  }
  const asked = { gain, odds, looks, maximumPulls };
  const report = await withBook(shared, { create: false }, async (book) => {
    if (options.keep) valueOrRefusal(await keepPlan(book, trial, { ...asked, notes }));
    if (options.sheet !== undefined) {
      const { html } = valueOrRefusal(await pullSheetOf(book, trial, asked, shared.view, options.paper));
      const file = resolve(options.sheet);
      await writeFile(file, html).catch((trouble: unknown) => {
        throw fileTrouble(trouble, file);
      });
    }
    return valueOrRefusal(await planOf(book, trial, asked, shared.wordsIn()));
  });
  const file = options.sheet === undefined ? null : resolve(options.sheet);
  context.answer(shared, { ...report, sheet: file }, () => [
    ...planLines(report, shared, context),
    ...(options.keep ? ['', 'Kept with the trial.'] : []),
    ...(file === null ? [] : ['', `Wrote the pull sheet to ${file}. Open it and print it.`]),
  ]);
}

function planLines(report: PlanReport, { view }: Shared, context: Context): string[] {
  const share = (percent: number | null) =>
    percent === null ? 'nothing yet' : `${number(percent, 1, view)} %`;
  const seen = (percent: number | null, kilowatts: number | null) =>
    kilowatts === null
      ? share(percent)
      : `${share(percent)} (${figure(kilowatts, 'kW', 'power', view, { decimals: 0 })})`;
  const odds = (value: number) => `${number(100 * value, 0, view)} %`;
  const order = report.pulls.map(({ combination }) => combination).join(' ');
  const whatIsMade = [
    [
      `with what is made (${report.whatIsMade.pulls.map((one) => `${one.counted} ${one.combination}`).join(', ')})`,
      seen(report.whatIsMade.smallestDifferencePercent, report.whatIsMade.smallestDifferenceKw),
    ],
    ...report.oneMore.map((one) => [
      `after one more pull of ${one.combination}`,
      seen(one.smallestDifferencePercent, one.smallestDifferenceKw),
    ]),
  ];
  return [
    context.colours.bold(
      report.reaches
        ? `${counted(report.pulls.length, 'pull')}: ${order}`
        : `Not with ${odds(report.odds)} odds. Nearest: ${counted(report.pulls.length, 'pull')}: ${order}`,
    ),
    ...(report.kept === null ? [] : [keptLine(report.kept)]),
    ...(isSeenAlready(report) ? ['The pulls made show it already.'] : []),
    `To see ${seen(report.gainPercent, report.gainKw)} with ${odds(report.odds)} odds; this plan gives ${odds(report.oddsReached)}.`,
    '',
    ...table([
      ['Smallest difference', 'Seen'],
      ['with this plan', seen(report.smallestDifferencePercent, report.smallestDifferenceKw)],
      ...(report.whatIsMade.smallestDifferencePercent === null ? [] : whatIsMade),
      [
        'no further pulls in these set-ups get below',
        report.floorPercent === 0 ? 'no floor' : share(report.floorPercent),
      ],
    ]),
    '',
    ...table([
      ['Combination', 'Name', 'Pulls', 'Before'],
      ...report.stays.map((stay) => [
        stay.combination,
        stay.shortName,
        String(stay.pulls),
        [
          ...(stay.takenApart ? ['take the engine apart, a new set-up'] : []),
          ...(stay.warmUps > 0 ? [`${counted(stay.warmUps, 'warm-up')}, never counted`] : []),
          ...(stay.waitMinutes === null ? [] : [`wait ${stay.waitMinutes} min before each`]),
        ].join('; '),
      ]),
    ]),
    '',
    `Look after ${report.looksAt.join(' and ')} counted pulls. About ${number(report.hours, 1, view)} h.`,
    `Start: oil ${report.start.oil}, coolant ${report.start.coolant}; ${report.start.alike} (${report.start.source}).`,
    '',
    'End the pull at once:',
    ...table(
      report.stopCriteria.map(({ label, limit, source }) => [label, limit, source]),
      '  ',
    ),
    context.colours.bold(report.planningAid),
    ...report.cautions.map((one) => `  ${one}`),
    ...(report.baselineAtRisk === null ? [] : ['', report.baselineAtRisk]),
    ...(report.remarks.length === 0 ? [] : ['', ...remarkLines(report.remarks, context)]),
  ];
}

function keptLine({ pulls, left, notes }: NonNullable<PlanReport['kept']>): string {
  const made = pulls.map((one) => `${one.counted} of ${one.planned} ${one.combination}`).join(', ');
  const next = left[0] === undefined ? 'all are made' : `next: ${left[0].combination}, pull ${left[0].order}`;
  return `Kept plan: ${made}; ${next}.${notes === '' ? '' : ` Notes: ${notes}`}`;
}

const isSeenAlready = ({ whatIsMade, gainPercent }: PlanReport): boolean =>
  whatIsMade.smallestDifferencePercent !== null && whatIsMade.smallestDifferencePercent <= gainPercent;
