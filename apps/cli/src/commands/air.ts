import type { AirReport } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { figure, height, number } from '../print/figure.ts';
import { remarkLines } from '../print/remarks.ts';
import { table } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withShared } from '../shared-options.ts';

export function addAirCommand(program: Command, context: Context): void {
  withShared(program.command('air'))
    .description('what the air is, and what each standard corrects for it')
    .requiredOption(
      '--pressure <quantity>',
      'barometer at the place, not reduced to sea level: 98.2kPa, 29.4inHg',
    )
    .requiredOption('--temperature <quantity>', 'of the air at the inlet: 30C, 86F')
    .option(
      '--humidity <quantity>',
      '45%, "12 C dew point", "20 C wet bulb", "1.2 kPa vapour" (default: unknown, taken as dry)',
    )
    .option('--altitude <quantity>', 'of the place, to catch a barometer reduced to sea level: 300m, 980ft')
    .addHelpText(
      'after',
      examples(
        'pullbook air --pressure 98.2kPa --temperature 30C --humidity 45%',
        'pullbook air --pressure 29.4inHg --temperature 86F --humidity "60 F dew point" --altitude 980ft --json',
      ),
    )
    .action(async (options, command: Command) => {
      const shared = context.shared(command);
      const { airReport, weatherFromText } = await import('@pullbook/workshop');
      const reading = valueOrRefusal(weatherFromText(options));
      // The air needs no book; one that is named has its say in how figures are shown.
      if (shared.bookNamed) await withBook(shared, { create: false }, async () => undefined);
      const report = valueOrRefusal(airReport(reading, shared.wordsIn()));
      context.answer(shared, report, () => airLines(report, shared, context));
    });
}

function airLines(air: AirReport, { view }: Shared, context: Context): string[] {
  const humidity = air.relativeHumidity === null ? null : air.relativeHumidity * 100;
  return [
    ...table([
      ['Air pressure', figure(air.pressureKpa, 'kPa', 'absolutePressure', view)],
      ['Temperature', figure(air.temperatureC, '°C', 'temperature', view)],
      ['Relative humidity', humidity === null ? 'unknown' : `${number(humidity, 1, view)} %`],
      ['Dew point', figure(air.dewPointC, '°C', 'temperature', view)],
      ['Dry pressure', figure(air.dryPressureKpa, 'kPa', 'absolutePressure', view)],
      ['Vapour pressure', figure(air.vapourPressureKpa, 'kPa', 'absolutePressure', view)],
      ['Density', figure(air.densityKgPerM3, 'kg/m³', 'density', view)],
      ['Density altitude', height(air.densityAltitudeM, view)],
    ]),
    '',
    ...table([
      ['Correction', 'Factor', 'Validity', 'Reference air'],
      ...air.corrections.map((one) => [
        one.name,
        number(one.factor, 4, view),
        one.insideValidity ? 'inside' : 'outside',
        one.referenceState,
      ]),
    ]),
    ...air.corrections.flatMap((one) =>
      one.outside.map((why) => context.colours.yellow(`  ${one.name}: ${why}`)),
    ),
    ...remarkLines(air.remarks, context),
  ];
}
