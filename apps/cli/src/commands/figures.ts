import type { CalibrationRow, FiguresPage } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { table } from '../print/table.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addFiguresCommand(program: Command, context: Context): void {
  withShared(program.command('figures'))
    .description('the shop’s own figures: how its pulls scatter, drift, cells, calibrations, predictions')
    .addHelpText('after', examples('pullbook figures', 'pullbook figures --json --book ~/my-book'))
    .action(async (_options: object, own: Command) => {
      const shared = context.shared(own);
      const { figuresOf, figuresPageOf, figuresReport } = await import('@pullbook/workshop');
      await withBook(shared, { create: false }, async (book) => {
        const report = figuresReport(await figuresOf(book));
        const page = await figuresPageOf(book, shared.view);
        context.answer(shared, report, () => figureLines(page));
      });
    });
}

function figureLines(page: FiguresPage): string[] {
  const tables = [page.repeatability, page.spreads, page.cellOffsets, page.sessions].flatMap((one) => {
    if (one === null) return [];
    const head = ['', ...one.columns.map(({ text }) => text)];
    const rows = one.rows.map(({ name, cells }) => [name, ...cells]);
    return ['', one.title, ...table([head, ...rows])];
  });
  const { predictions, calibrations, pullsNotRead, sentence, moved } = page;
  return [
    sentence,
    ...(pullsNotRead > 0 ? [`${pullsNotRead} pulls are not read yet and not in these figures.`] : []),
    ...moved,
    ...tables,
    ...(calibrations.length > 0
      ? [
          '',
          'Calibrations of instruments',
          ...table([CALIBRATION_HEAD, ...calibrations.map(calibrationCells)]),
        ]
      : []),
    '',
    `Predictions: ${predictions.tally}`,
    ...predictions.lines.map(
      ({ question, about, said, cameOut }) => `${question} ${about}: ${said}: ${cameOut}`,
    ),
  ];
}

const CALIBRATION_HEAD = ['Day', 'Cell', 'Instrument', 'Found', 'Valid until', 'Stands today'];

const calibrationCells = ({ cell, instrument, calibration, state }: CalibrationRow): string[] => [
  calibration?.day ?? 'never noted',
  cell,
  instrument,
  calibration?.found ?? '',
  calibration?.validUntil ?? '',
  state ?? '',
];
