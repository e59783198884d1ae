import type { FuelReport, FuelText } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fuelLines } from '../print/fuel-lines.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addFuelCommand(program: Command, context: Context): void {
  withShared(program.command('fuel'))
    .description('what fuel a power or an air flow takes, and the injectors, pump and line that pass it')
    .option('--power <quantity>', 'at the brake, as observed: 500hp, 370kW')
    .option('--air-flow <quantity>', 'in place of power: 0.45kg/s, 60lb/min')
    .option(
      '--fuel <fuel>',
      'gasoline, e10, e85, "e85 winter", ethanol, methanol, E30, "gasoline 102 RON", "70 % ethanol, 30 % gasoline" (default: gasoline)',
    )
    .option(
      '--induction <kind>',
      'na, boosted (with a centrifugal supercharger), roots, screw, turbocharged (default: na)',
    )
    .option('--injectors <count>', 'how many share the fuel')
    .option('--fuel-pressure <quantity>', 'at rest, above what the regulator goes by: 4bar, 58psi')
    .option(
      '--reference <what>',
      'what fuel pressure is held above: manifold or open-air (default: manifold)',
    )
    .option('--boost <quantity>', 'gauge: 10psi')
    .option('--engine-speed <quantity>', 'the highest at that power: 6500rpm')
    .option('--injector-flow <quantity>', 'of one that is at hand: 42lb/h, "440 cc/min"; gives its duty')
    .option('--injector-pressure <quantity>', 'at which that is told (default: 3bar)')
    .option('--dead-time <quantity>', 'by which an injector opens late, at 13.5 V: 1ms')
    .option('--voltage <quantity>', 'at pump and injectors at full load (default: 13.5V)')
    .option('--duty <share>', 'of the time for which injectors may be open (default: 85%)')
    .option('--lambda <ratio>', 'in place of what is usual: 0.80')
    .option('--consumption <quantity>', 'in place of what is usual: "0.55 lb/(hp·h)", "330 g/kWh"')
    .addHelpText(
      'after',
      examples(
        'pullbook fuel --power 500hp --fuel e85 --induction boosted --injectors 8 --fuel-pressure 4bar --engine-speed 6500rpm --json',
        'pullbook fuel --power 520hp --induction boosted --injectors 6 --injector-flow 65lb/h --injector-pressure 3bar --fuel-pressure 3bar --reference open-air --boost 10psi',
        'pullbook fuel --air-flow 0.45kg/s --fuel "70 % ethanol, 30 % gasoline" --lambda 0.82',
      ),
    )
    .action(async (options: FuelText, command: Command) => {
      const shared = context.shared(command);
      const { fuelReport } = await import('@pullbook/workshop');
      // Fuel needs no book; one that is named has its say in how figures are shown.
      if (shared.bookNamed) await withBook(shared, { create: false }, async () => undefined);
      const report: FuelReport = valueOrRefusal(fuelReport(options, shared.wordsIn()));
      context.answer(shared, report, () => fuelLines(report, shared, context));
    });
}
