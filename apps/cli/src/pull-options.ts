import type { PullDetailsText } from '@pullbook/workshop';
import { type Command, Option } from 'commander';
import { countValue, eventValue, numberValue } from './option-values.ts';
import { Refusal } from './refusal.ts';

export interface PullOptions {
  name?: string;
  combination?: string;
  setUp?: string;
  pressure?: string;
  temperature?: string;
  humidity?: string;
  altitude?: string;
  corrected?: string;
  factor?: number;
  cell?: string;
  operator?: string;
  recordedAt?: string;
  inertia?: string;
  inertiaCompensated?: 'yes' | 'no' | 'unknown';
  spark?: string;
  targetLambda?: string;
  jets?: string;
  fuelPressure?: string;
  coolerWater?: string;
  fuelBatch?: string;
  boostTap?: string;
  chargeProbe?: string;
  inletProbe?: string;
  note?: string;
  event?: { engineSpeed: string | null; text: string }[];
  aborted?: boolean;
  order?: number;
}

/** Adds what can be written down about a pull. */
export function withPullOptions(command: Command): Command {
  return command
    .option('--name <text>', 'name of the pull')
    .option('--combination <id>', 'combination it was made with: id, its beginning, or name')
    .option(
      '--set-up <words>',
      'which time of it on the brake: "second fitting"; the same words, the same set-up',
    )
    .option('--pressure <quantity>', 'barometer in the cell, not reduced to sea level: 98.2kPa, 29.4inHg')
    .option('--temperature <quantity>', 'air at the inlet: 30C, 86F')
    .option('--humidity <quantity>', '45%, "12 C dew point", "20 C wet bulb", "1.2 kPa vapour"')
    .option('--altitude <quantity>', 'of the cell, to catch a barometer reduced to sea level: 300m, 980ft')
    .option(
      '--corrected <standard>',
      'what torque and power were corrected by: observed, sae-j1349, …, unknown',
    )
    .option('--factor <number>', 'factor of that correction, as printed: 1.021', numberValue)
    .option('--cell <text>', 'test cell')
    .option('--operator <text>', 'who made it')
    .option('--recorded-at <time>', '2026-03-14T10:42:00+01:00')
    .option('--inertia <quantity>', 'moment of inertia of all that turns at engine speed: "0.31 kg·m²"')
    .addOption(
      new Option(
        '--inertia-compensated <state>',
        'whether the figures hold the inertia torque already',
      ).choices(['yes', 'no', 'unknown']),
    )
    .option('--spark <text>', 'tune: spark advance')
    .option('--target-lambda <text>', 'tune: mixture aimed at')
    .option('--jets <text>', 'tune: jets')
    .option('--fuel-pressure <text>', 'tune: fuel pressure')
    .option('--cooler-water <text>', 'tune: what cools the charge cooler, as it comes in: "ice water, 3 °C"')
    .option('--fuel-batch <text>', 'tune: drum or delivery the fuel came from: "drum 4, opened 2 March"')
    .option('--boost-tap <text>', 'where boost was tapped')
    .option('--charge-probe <text>', 'where charge temperature was taken')
    .option('--inlet-probe <text>', 'where inlet temperature was taken')
    .option('--note <text>', 'a note on the pull')
    .option(
      '--event <speed: text>',
      'something that happened: "5600rpm: throttle lifted", or words alone (repeatable)',
      eventValue,
    )
    .option('--order <number>', 'place in the order of its session, from 1', countValue)
    .option('--aborted', 'it was broken off in the cell: kept, and not counted');
}

/** What was said of a pull on the command line, as text for the workshop. */
export function pullDetailsOf(options: PullOptions): PullDetailsText {
  const tune = {
    sparkAdvance: options.spark,
    targetLambda: options.targetLambda,
    jets: options.jets,
    fuelPressure: options.fuelPressure,
    coolerWater: options.coolerWater,
    fuelBatch: options.fuelBatch,
  };
  const places = {
    boostTap: options.boostTap,
    chargeProbe: options.chargeProbe,
    inletProbe: options.inletProbe,
  };
  return {
    name: options.name,
    combinationId: options.combination,
    setUp: options.setUp,
    cell: options.cell,
    operator: options.operator,
    recordedAt: options.recordedAt,
    weather: weatherOf(options),
    carried: carriedOf(options),
    momentOfInertia: options.inertia,
    inertiaCompensated: options.inertiaCompensated,
    tune: anyOf(tune),
    places: anyOf(places),
    notes: options.note,
    events: options.event,
    outcome: options.aborted ? 'aborted' : undefined,
    orderInSession: options.order,
  };
}

function weatherOf(options: PullOptions): PullDetailsText['weather'] {
  const { pressure, temperature, humidity, altitude } = options;
  if (!anyOf({ pressure, temperature, humidity, altitude })) return undefined;
  if (pressure === undefined || temperature === undefined) {
    const missing = [
      ...(pressure === undefined ? ['--pressure (98.2kPa)'] : []),
      ...(temperature === undefined ? ['--temperature (30C)'] : []),
    ];
    throw new Refusal(
      'weather-incomplete',
      `The air needs pressure and temperature at least: add ${missing.join(' and ')}.`,
    );
  }
  return { pressure, temperature, humidity, altitude };
}

function carriedOf(options: PullOptions): PullDetailsText['carried'] {
  const { corrected, factor } = options;
  if (corrected !== undefined) return { standard: corrected, factor };
  if (factor === undefined) return undefined;
  throw new Refusal(
    'factor-alone',
    `A factor of ${factor} says nothing alone: add --corrected with its standard, such as --corrected sae-j1349.`,
  );
}

const anyOf = <T extends object>(fields: T): T | undefined =>
  Object.values(fields).some((value) => value !== undefined) ? fields : undefined;
