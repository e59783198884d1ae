import type { CellReport, CellsReport } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { counted, table } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

interface CellOptions {
  name?: string;
  brake?: string;
  altitude?: string;
  inertia?: string;
  notes?: string;
}

const textOf = ({ inertia, ...rest }: CellOptions) => ({ ...rest, momentOfInertia: inertia });

export function addCellCommands(program: Command, context: Context): void {
  const parent = program
    .command('cell')
    .description('test cells: brake, altitude, inertia, instruments and their calibrations');
  addList(parent, context);
  addShow(parent, context);
  addAdd(parent, context);
  addChange(parent, context);
  addInstrumentCommands(parent, context);
  addCalibrationCommand(parent, context);
}

const withCellOptions = (command: Command): Command =>
  command
    .option('--brake <text>', 'the brake: "water brake, 300 mm rotor"')
    .option('--altitude <quantity>', 'above the sea, to catch a barometer reduced to it: 210m, 690ft')
    .option('--inertia <quantity>', 'of brake and coupling: "0.12 kg·m²"')
    .option('--notes <text>', 'anything else');

function addList(parent: Command, context: Context): void {
  withShared(parent.command('list'))
    .description('the cells, and those that pulls name and nobody described')
    .addHelpText('after', examples('pullbook cell list', 'pullbook cell list --json'))
    .action(async (_: object, own: Command) => {
      const shared = context.shared(own);
      const { cellsReport } = await import('@pullbook/workshop');
      const report = await withBook(shared, { create: false }, (book) => cellsReport(book, shared.view));
      context.answer(shared, report, () => listLines(report));
    });
}

function addShow(parent: Command, context: Context): void {
  withShared(parent.command('show <cell>'))
    .description('one cell with its instruments and their calibrations')
    .addHelpText('after', examples('pullbook cell show "Cell 1"'))
    .action(async (id: string, _: object, own: Command) => {
      const shared = context.shared(own);
      const { cellReportOf } = await import('@pullbook/workshop');
      const cell = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => cellReportOf(book, id, shared.view)),
      );
      context.answer(shared, { schemaVersion: 1, ...cell }, () => cellLines(cell, context));
    });
}

function addAdd(parent: Command, context: Context): void {
  withCellOptions(withShared(parent.command('add <name>')))
    .description('describe a cell; pulls that name it are its pulls from then on')
    .addHelpText(
      'after',
      examples('pullbook cell add "Cell 1" --brake "water brake" --altitude 210m --inertia "0.12 kg·m²"'),
    )
    .action(async (name: string, options: CellOptions, own: Command) => {
      const shared = context.shared(own);
      const { addCell } = await import('@pullbook/workshop');
      const added = valueOrRefusal(
        await withBook(shared, { create: true }, (book) => addCell(book, { ...textOf(options), name })),
      );
      context.answer(shared, added, () => [`Described ${added.name}, cell ${added.id.slice(0, 8)}.`]);
    });
}

function addChange(parent: Command, context: Context): void {
  withCellOptions(withShared(parent.command('change <cell>')))
    .description('change what is said of a cell; under another name its pulls follow')
    .option('--name <text>', 'another name')
    .option('--reason <text>', 'why, for the log')
    .addHelpText('after', examples('pullbook cell change "Cell 1" --altitude 690ft'))
    .action(async (id: string, options: CellOptions & { reason?: string }, own: Command) => {
      const shared = context.shared(own);
      const { changeCell } = await import('@pullbook/workshop');
      const { reason = '', ...said } = options;
      const changed = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => changeCell(book, id, textOf(said), reason)),
      );
      context.answer(shared, changed, () => [`Changed ${changed.name}.`]);
    });
}

function addInstrumentCommands(parent: Command, context: Context): void {
  withShared(parent.command('instrument <cell> <name>'))
    .description('note an instrument of a cell, or take one out of it')
    .option('--measures <channel>', 'what it measures: torque, weather, boost, lambda …')
    .option('--serial <text>', 'serial number')
    .option('--take-out <reason>', 'it left the cell; why')
    .addHelpText(
      'after',
      examples(
        'pullbook cell instrument "Cell 1" "load cell" --measures torque --serial 1234',
        'pullbook cell instrument "Cell 1" "load cell" --take-out "broken, replaced"',
      ),
    )
    .action(
      async (
        cell: string,
        name: string,
        options: { measures?: string; serial?: string; takeOut?: string },
        own: Command,
      ) => {
        const shared = context.shared(own);
        const { addInstrument, removeInstrument } = await import('@pullbook/workshop');
        const { takeOut, ...said } = options;
        if (takeOut !== undefined) {
          const out = valueOrRefusal(
            await withBook(shared, { create: false }, (book) => removeInstrument(book, cell, name, takeOut)),
          );
          context.answer(shared, out, () => [`Took ${name} out of ${cell}.`]);
          return;
        }
        const added = valueOrRefusal(
          await withBook(shared, { create: false }, (book) => addInstrument(book, cell, { name, ...said })),
        );
        context.answer(shared, added, () => [`Noted ${name} in ${cell}.`]);
      },
    );
}

function addCalibrationCommand(parent: Command, context: Context): void {
  withShared(parent.command('calibration <cell> <instrument>'))
    .description('note a calibration of an instrument')
    .requiredOption('--day <day>', 'when it was made: 2026-03-10')
    .option('--valid-until <day>', 'to which day it holds')
    .option('--how <text>', '"six dead weights up and down, arm 0.75 m"')
    .option('--found <text>', 'what it showed: "span +0.2 %, zero 0.4 N·m"')
    .option('--by <text>', 'who made it')
    .addHelpText(
      'after',
      examples(
        'pullbook cell calibration "Cell 1" "load cell" --day 2026-03-10 --valid-until 2026-04-09 --how "six dead weights, arm 0.75 m" --found "span +0.2 %"',
      ),
    )
    .action(async (cell: string, instrument: string, options: { day: string }, own: Command) => {
      const shared = context.shared(own);
      const { addCalibration } = await import('@pullbook/workshop');
      const added = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => addCalibration(book, cell, instrument, options)),
      );
      context.answer(shared, added, () => [`Noted the calibration of ${instrument}.`]);
    });
}

function listLines({ cells, undescribed }: CellsReport): string[] {
  if (cells.length + undescribed.length === 0)
    return ['No cell yet. Describe one: pullbook cell add "Cell 1"'];
  const rows = cells.map((cell) => [
    cell.name,
    counted(cell.pulls, 'pull'),
    cell.altitudeText || '–',
    counted(cell.instruments.length, 'instrument'),
    cell.instruments
      .filter(({ state }) => state !== 'in force')
      .map(({ name }) => name)
      .join(', '),
  ]);
  return [
    ...table([['Cell', 'Pulls', 'Altitude', 'Instruments', 'No calibration in force'], ...rows]),
    ...undescribed.map(
      ({ name, pulls }) => `${name}: named in ${counted(pulls, 'pull')}, not described yet.`,
    ),
  ];
}

function cellLines(cell: CellReport, { colours }: Context): string[] {
  return [
    colours.bold(cell.name),
    ...table([
      ['Brake', cell.brake || 'not noted'],
      ['Altitude', cell.altitudeText || 'not noted'],
      ['Inertia of brake and coupling', cell.momentOfInertiaText || 'not noted'],
      ['Pulls', String(cell.pulls)],
      ...(cell.notes === '' ? [] : [['Notes', cell.notes]]),
    ]),
    ...cell.instruments.flatMap(({ name, measuresLabel, serial, state, calibrations }) => [
      '',
      `${colours.bold(name)} (${measuresLabel}${serial === '' ? '' : `, serial ${serial}`}): ${stateWords(state)} today`,
      ...calibrations.map(
        ({ day, validUntil, how, found, by }) =>
          `  ${[`${day}${validUntil === null ? '' : ` to ${validUntil}`}`, how, found, by].filter(Boolean).join('; ')}`,
      ),
    ]),
  ];
}

const stateWords = (state: CellReport['instruments'][number]['state']): string =>
  ({
    'in force': 'calibration in force',
    'run out': 'calibration run out',
    'long ago': 'calibrated long ago',
    none: 'no calibration noted',
    'day unknown': 'calibration unknown',
  })[state];
