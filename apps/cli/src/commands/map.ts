import { readFile, writeFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import type { MapReport } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { figure, number } from '../print/figure.ts';
import { remarkLines } from '../print/remarks.ts';
import { counted, table } from '../print/table.ts';
import { refusalOf, valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withShared } from '../shared-options.ts';

export function addMapCommands(program: Command, context: Context): void {
  const parent = program
    .command('map')
    .description('compressor maps: corrected flow and pressure ratio over speed lines, from open CSV');
  addAdd(parent, context);
  addList(parent, context);
  addShow(parent, context);
  addExport(parent, context);
  addChange(parent, context);
}

function addAdd(parent: Command, context: Context): void {
  withShared(parent.command('add <file>'))
    .description('read a compressor map and put it into the book; sheets name it under supercharger, map')
    .option('--name <text>', 'in place of the name in the file')
    .addHelpText(
      'after',
      examples(
        'pullbook map add samples/maps/shop-blower.csv',
        'pullbook map add blower.csv --name "shop blower no. 2" --json',
      ),
    )
    .action(async (given: string, { name }: { name?: string }, own: Command) => {
      const shared = context.shared(own);
      const { addMapFromText, edgeRemarks } = await import('@pullbook/workshop');
      const file = resolve(given);
      const text = await readFile(file, 'utf8').catch((trouble: unknown) => {
        throw fileTrouble(trouble, file);
      });
      const added = await withBook(shared, { create: true }, (book) =>
        addMapFromText(book, text, { name, fileName: basename(file) }),
      );
      if (!added.ok) throw refusalOf(added.remarks);
      const remarks = [
        ...edgeRemarks(added.remarks, basename(file), shared.wordsIn()),
        ...added.value.remarks,
      ];
      context.answer(shared, { ...added.value, remarks }, () => [
        `Added "${added.value.name}". A sheet names it under supercharger, map.`,
        '',
        ...mapLines({ ...added.value, remarks }, shared, context),
      ]);
    });
}

function addList(parent: Command, context: Context): void {
  withShared(parent.command('list'))
    .description('the maps of the book, each with how well it meets its own points')
    .addHelpText('after', examples('pullbook map list', 'pullbook map list --json'))
    .action(async (_: object, own: Command) => {
      const shared = context.shared(own);
      const { mapRows } = await import('@pullbook/workshop');
      const maps = await withBook(shared, { create: false }, (book) => mapRows(book));
      context.answer(shared, { schemaVersion: 1, maps }, () =>
        maps.length === 0
          ? ['No compressor map yet. Add one: pullbook map add FILE.csv']
          : table([
              ['Id', 'Name', 'Points', 'Lines', 'Meets its pressure ratios within'],
              ...maps.map((map) => [
                map.id.slice(0, 8),
                map.name,
                String(map.points.length),
                String(map.quality?.lines.length ?? '–'),
                map.quality === null
                  ? map.form === 'rated'
                    ? 'assumed from one rated point'
                    : 'cannot be fitted'
                  : `${number(map.quality.pressureRatioRmsPercent, 2, shared.view)} %`,
              ]),
            ]),
      );
    });
}

function addShow(parent: Command, context: Context): void {
  withShared(parent.command('show <map>'))
    .description('one map: sizes, reference air, speed lines and how well each is met')
    .addHelpText('after', examples('pullbook map show "shop blower no. 2"'))
    .action(async (given: string, _: object, own: Command) => {
      const shared = context.shared(own);
      const { mapReportOf } = await import('@pullbook/workshop');
      const map = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => mapReportOf(book, given)),
      );
      context.answer(shared, map, () => mapLines(map, shared, context));
    });
}

function addExport(parent: Command, context: Context): void {
  withShared(parent.command('export <map>'))
    .description('the map as open CSV, full precision, to be read by any program and by this one again')
    .option('--out <file.csv>', 'write it there (default: print it)')
    .addHelpText('after', examples('pullbook map export "shop blower no. 2" --out blower.csv'))
    .action(async (given: string, { out }: { out?: string }, own: Command) => {
      const shared = context.shared(own);
      const { mapAsCsv } = await import('@pullbook/workshop');
      const { name, text } = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => mapAsCsv(book, given)),
      );
      const file = out === undefined ? null : resolve(out);
      if (file !== null)
        await writeFile(file, text).catch((trouble: unknown) => {
          throw fileTrouble(trouble, file);
        });
      context.answer(shared, { schemaVersion: 1, name, file, csv: file === null ? text : null }, () =>
        file === null ? [text.trimEnd()] : [`Wrote "${name}" to ${file}.`],
      );
    });
}

function addChange(parent: Command, context: Context): void {
  withShared(parent.command('change <map>'))
    .description('give a map another name or other notes; its points stay')
    .option('--name <text>', 'another name')
    .option('--notes <text>', 'other notes')
    .requiredOption('--reason <text>', 'why; it stands in the log')
    .addHelpText(
      'after',
      examples('pullbook map change "shop blower no. 2" --name "small blower" --reason "renamed"'),
    )
    .action(
      async (
        given: string,
        { reason, ...change }: { name?: string; notes?: string; reason: string },
        own: Command,
      ) => {
        const shared = context.shared(own);
        const { changeMap } = await import('@pullbook/workshop');
        const done = valueOrRefusal(
          await withBook(shared, { create: false }, (book) => changeMap(book, given, change, reason)),
        );
        context.answer(shared, done, () => [`Changed "${done.name}".`]);
      },
    );
}

function mapLines(map: MapReport, { view }: Shared, context: Context): string[] {
  const size = (millimetres: number | null) =>
    millimetres === null ? 'not known' : figure(millimetres, 'mm', 'length', view);
  const { quality } = map;
  return [
    context.colours.bold(map.name),
    ...table([
      ['', ''],
      ['Wheel exit', size(map.wheelExitDiameterMm)],
      ['Wheel inlet', size(map.wheelInletDiameterMm)],
      [
        'Corrected to',
        `${figure(map.referencePressureKpa, 'kPa', 'absolutePressure', view)}, ${figure(map.referenceTemperatureC, '°C', 'temperature', view)}`,
      ],
      ['Points', `${map.points.length}, ${map.form === 'rated' ? 'a rating' : map.origin}`],
      ['Left end of a line', map.leftEnd === 'surge' ? 'surge, as measured' : 'not known to be surge'],
    ]).slice(1),
    ...(quality === null
      ? []
      : [
          '',
          ...table([
            ['Speed line, r/min', 'Points', 'Pressure ratio within, %', 'Efficiency within'],
            ...quality.lines.map((line) => [
              number(line.speedRpm, 0, view),
              String(line.points),
              number(line.pressureRatioRmsPercent, 2, view),
              number(line.efficiencyRms, 4, view),
            ]),
            [
              `all ${counted(quality.lines.length, 'line')}`,
              String(map.points.length),
              number(quality.pressureRatioRmsPercent, 2, view),
              number(quality.efficiencyRms, 4, view),
            ],
          ]),
        ]),
    ...(map.notes === '' ? [] : ['', map.notes]),
    ...(map.remarks.length === 0 ? [] : ['', ...remarkLines(map.remarks, context)]),
  ];
}
