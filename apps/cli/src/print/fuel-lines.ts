import { figureOf, formatQuantity, type QuantityKind, toInside, writeSaid } from '@pullbook/core/quantity';
import type { FuelReport } from '@pullbook/workshop';
import type { Context } from '../context.ts';
import type { Shared } from '../shared-options.ts';
import { figure, number } from './figure.ts';
import { remarkLines } from './remarks.ts';
import { table } from './table.ts';

type View = Shared['view'];
type Value = number | null;

/** What fuel it takes, for a person: figure, and what it rests on. */
export function fuelLines(fuel: FuelReport, { view }: Shared, context: Context): string[] {
  const rows = [
    ['What', 'Figure', 'From'],
    ...fuelRows(fuel, view),
    ...flowRows(fuel, view),
    ...injectorRows(fuel, view),
    ...feedRows(fuel, view),
  ];
  return [...table(rows), ...remarkLines(fuel.remarks, context)];
}

function fuelRows(fuel: FuelReport, view: View): string[][] {
  const octane = (value: Value) => (value === null ? 'not known' : number(value, 0, view));
  const density = (value: number) =>
    writeSaid('', [figureOf(value, 'density', { units: { us: 'lb/gal', si: 'kg/m³' }, decimals: 2 })], view);
  return [
    ['Fuel', fuel.fuel, ''],
    [
      'Stoichiometric air to fuel',
      `${number(fuel.stoichiometricAirFuelRatio, 2, view)}:1`,
      fuel.stoichiometricAirFuelRatioOrigin,
    ],
    ['Heating value', `${number(fuel.heatingValueMjPerKg, 1, view)} MJ/kg`, fuel.heatingValueOrigin],
    ['Density', fuel.densityKgPerM3 === null ? '–' : density(fuel.densityKgPerM3), fuel.densityOrigin],
    ['Latent heat', `${number(fuel.latentHeatKjPerKg, 0, view)} kJ/kg`, fuel.latentHeatOrigin],
    [
      'Octane',
      `${octane(fuel.researchOctane)} research, ${octane(fuel.motorOctane)} motor`,
      fuel.octaneOrigin,
    ],
  ];
}

function flowRows(fuel: FuelReport, view: View): string[][] {
  const shown = (name: string, ends: Ends, unit: string, kind: QuantityKind, from: string) => [
    name,
    withEnds(ends, (value) => figure(value, unit, kind, view), bare(unit, kind, view)),
    from,
  ];
  const plain = (value: Value) => number(value, 2, view);
  return [
    shown('Power', [fuel.powerKw, fuel.powerKwLow, fuel.powerKwHigh], 'kW', 'power', fuel.powerOrigin),
    shown(
      'Consumption',
      [
        fuel.specificConsumptionGPerKwh,
        fuel.specificConsumptionGPerKwhLow,
        fuel.specificConsumptionGPerKwhHigh,
      ],
      'g/(kW·h)',
      'specificConsumption',
      fuel.specificConsumptionOrigin,
    ),
    ['Lambda', withEnds([fuel.lambda, fuel.lambdaLow, fuel.lambdaHigh], plain, plain), fuel.lambdaOrigin],
    shown(
      'Fuel flow',
      [fuel.fuelFlowKgPerH, fuel.fuelFlowKgPerHLow, fuel.fuelFlowKgPerHHigh],
      'kg/h',
      'massFlow',
      fuel.fuelFlowOrigin,
    ),
    shown(
      'Air flow',
      [fuel.airFlowKgPerH, fuel.airFlowKgPerHLow, fuel.airFlowKgPerHHigh],
      'kg/h',
      'massFlow',
      fuel.airFlowOrigin,
    ),
  ];
}

function injectorRows(fuel: FuelReport, view: View): string[][] {
  if (fuel.injectors === null) return [];
  const pressure = (value: Value) => figure(value, 'kPa', 'pressureDifference', view);
  const whole = (value: Value) => number(value, 0, view);
  const duty: Ends = [fuel.dutyPercent, fuel.dutyPercentLow, fuel.dutyPercentHigh];
  const open = fuel.openTimeMs === null ? '' : `, ${number(fuel.openTimeMs, 1, view)} ms`;
  const needed: Ends = [
    fuel.injectorFlowNeededCcPerMin,
    fuel.injectorFlowNeededCcPerMinLow,
    fuel.injectorFlowNeededCcPerMinHigh,
  ];
  return [
    [
      'Fuel pressure',
      `${pressure(fuel.fuelPressureKpa)} above ${fuel.fuelReference === 'manifold' ? 'the manifold' : 'open air'}`,
      fuel.fuelPressureOrigin,
    ],
    [
      `Each of ${fuel.injectors} must pass`,
      withEnds(needed, (value) => `${whole(value)} cc/min`, whole),
      `when it stays open, with ${pressure(fuel.pressureAcrossKpa)} across`,
    ],
    [
      'Size to look for',
      `${figure(fuel.injectorSizeKgPerH, 'kg/h', 'massFlow', view)}, ${whole(fuel.injectorSizeCcPerMin)} cc/min`,
      `as told of gasoline at ${pressure(fuel.ratedPressureKpa)}, ${fuel.ratedPressureOrigin}`,
    ],
    ['Injectors open', `${withEnds(duty, (value) => `${whole(value)} %`, whole)}${open}`, fuel.dutyOrigin],
  ];
}

function feedRows(fuel: FuelReport, view: View): string[][] {
  const whole = (value: Value) => number(value, 0, view);
  const needed: Ends = [fuel.pumpFlowNeededLPerH, fuel.pumpFlowNeededLPerHLow, fuel.pumpFlowNeededLPerHHigh];
  const at =
    fuel.pumpPressureKpa === null
      ? ''
      : ` at ${figure(fuel.pumpPressureKpa, 'kPa', 'pressureDifference', view)}`;
  const told =
    fuel.pumpFlowNeededLPerHAt13V5 === fuel.pumpFlowNeededLPerH
      ? ''
      : `, ${whole(fuel.pumpFlowNeededLPerHAt13V5)} L/h as told at 13.5 V`;
  return [
    ['Pump', `${withEnds(needed, (value) => `${whole(value)} L/h`, whole)}${at}${told}`, fuel.pumpOrigin],
    [
      'Feed line, inside at least',
      `${figure(fuel.lineInsideMm, 'mm', 'length', view)}, ${fuel.lineSize ?? 'more than one'}`,
      fuel.lineOrigin,
    ],
  ];
}

type Ends = readonly [value: Value, low: Value, high: Value];

/** `425.0 lb/h (375.0 to 475.0)`; without ends where they are one. */
const withEnds = (
  [value, low, high]: Ends,
  show: (value: Value) => string,
  end: (value: Value) => string,
): string => (low === high ? show(value) : `${show(value)} (${end(low)} to ${end(high)})`);

/** The number alone, in the units a person asked for. */
const bare = (unit: string, kind: QuantityKind, view: View) => (value: Value) =>
  value === null
    ? '–'
    : formatQuantity(toInside(value, unit, kind), kind, { system: view.units, decimalMark: view.decimalMark })
        .number;
