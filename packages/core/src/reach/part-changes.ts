import type { Cooler } from '../airpath/index.ts';
import { keyOfCooler } from '../airpath/index.ts';
import { type Fuel, fuelNamed } from '../fuel/index.ts';
import { figureOf, percentFigure, speedFigure } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import { ENTERED, edit } from './entered.ts';
import type {
  ReachBreathing,
  ReachBuild,
  ReachChange,
  ReachCooler,
  ReachFuel,
  ReachInput,
  SheetEdit,
} from './model.ts';
import { isLambdaTold, lambdaOn } from './supply-of-rung.ts';

/** Words of a sheet by which a cooler is known again. */
const COOLER_WORDS: Record<Cooler['by'], { type: string; coolant: string | null }> = {
  air: { type: 'air to air', coolant: null },
  water: { type: 'air to water', coolant: 'water' },
  'ice water': { type: 'air to water', coolant: 'ice water' },
};

/** Another cooler in place of the one that is there, or none. */
export function coolerChange({ name, cooler, cost, from }: ReachCooler, build: ReachBuild): ReachChange {
  const present = build.match?.input.cooler ?? null;
  const before = present === null ? 'no cooler' : oneOf(present);
  return {
    part: 'cooler',
    said: said`${cooler === null ? 'No cooler' : `Cooler “${name}”`} in place of ${before}`,
    edits: cooler === null ? [] : coolerEdits(cooler),
    clears: ['cooler'],
    cost,
    ground: 'rule of thumb',
    from: said`${from.source}`,
  };
}

/** `one of 80 % with ice water at 4 °C` */
function oneOf({ by, effectiveness, coolantTemperature }: Cooler): Said {
  const share = percentFigure(effectiveness);
  return by === 'air' || coolantTemperature === null
    ? said`one of ${share}`
    : said`one of ${share} with ${by} at ${figureOf(coolantTemperature, 'temperature', { decimals: 0 })}`;
}

/** Whether a cooler of the list does something else than the one of the build. */
export function isOtherCooler({ cooler }: ReachCooler, { match }: ReachBuild): boolean {
  if (match === null) return false;
  return keyOfCooler({ ...match.input, cooler }) !== keyOfCooler(match.input);
}

/** Whether the charge gets hotter with it than with the one of the build: then the spark that was pulled is too early, and what that costs no match tells. */
export function isHotterWith({ cooler }: ReachCooler, { match }: ReachBuild): boolean {
  const present = match?.input.cooler ?? null;
  return present !== null && (cooler === null || cooler.effectiveness < present.effectiveness);
}

function coolerEdits({ by, effectiveness, loss, coolantTemperature }: Cooler): SheetEdit[] {
  const { type, coolant } = COOLER_WORDS[by];
  return [
    edit('cooler', 'type', type),
    ...(coolant === null ? [] : [edit('cooler', 'coolant', coolant)]),
    edit('cooler', 'effectiveness', ENTERED.share(effectiveness)),
    edit('cooler', 'pressureLoss', ENTERED.pressure(loss.pressureDifference)),
    ...(loss.atFlow > 0 ? [edit('cooler', 'pressureLossFlow', ENTERED.massFlow(loss.atFlow))] : []),
    ...(coolantTemperature === null || by === 'air'
      ? []
      : [edit('cooler', 'coolantTemperature', ENTERED.temperature(coolantTemperature))]),
  ];
}

const capitalised = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Digits of lambda on a sheet. */
const LAMBDA_DIGITS = 3;

/** Another fuel in place of all that the sheet says of the one that is there; how the engine is mixed stays said where it was. */
export const fuelChange = (
  { fuel, cost, from }: ReachFuel,
  input: ReachInput,
  build: number,
): ReachChange => ({
  part: 'fuel',
  said: said`${capitalised(fuel.name)} in place of ${input.supply.fuel.name}`,
  edits: [
    ...fuelEdits(fuel),
    ...(isLambdaTold(input)
      ? [edit('fuel', 'lambda', lambdaOn(input, fuel, build).toPrecision(LAMBDA_DIGITS))]
      : []),
  ],
  clears: ['fuel'],
  cost,
  ground: 'rule of thumb',
  from: said`${from.source}`,
});

export const isOtherFuel = ({ fuel }: ReachFuel, { supply }: ReachInput): boolean =>
  fuel.name !== supply.fuel.name &&
  !(
    fuel.stoichiometricAirFuelRatio === supply.fuel.stoichiometricAirFuelRatio &&
    fuel.researchOctane === supply.fuel.researchOctane &&
    fuel.heatingValue === supply.fuel.heatingValue
  );

/** By its name where that says all; else by its shares and figures. */
function fuelEdits(fuel: Fuel): SheetEdit[] {
  const shareOf = (substance: string): number =>
    fuel.parts.find((part) => part.substance === substance)?.volumeShare ?? 0;
  const octane = [
    ...(fuel.researchOctane === null
      ? []
      : [edit('fuel', 'researchOctane', ENTERED.number(fuel.researchOctane))]),
    ...(fuel.motorOctane === null ? [] : [edit('fuel', 'motorOctane', ENTERED.number(fuel.motorOctane))]),
  ];
  if (fuelNamed(fuel.name).ok) return [edit('fuel', 'name', fuel.name), ...octane];
  return [
    edit('fuel', 'name', fuel.name),
    ...(['ethanol', 'methanol'] as const)
      .filter((substance) => shareOf(substance) > 0)
      .map((substance) => edit('fuel', `${substance}Share`, ENTERED.share(shareOf(substance)))),
    ...octane,
    edit('fuel', 'density', `${ENTERED.number(fuel.density)} kg/m3`),
    edit('fuel', 'stoichiometricAirFuelRatio', ENTERED.number(fuel.stoichiometricAirFuelRatio)),
  ];
}

export const breathingChange = ({ name, edits, cost, ground, from }: ReachBreathing): ReachChange => ({
  part: 'breathing',
  said: said`${name}`,
  edits,
  clears: [],
  cost,
  ground,
  from,
});

/** Stopping the engine sooner: it lets the impeller be geared faster. It costs nothing but the speeds that are given up. */
export const speedLimitChange = (rpm: number): ReachChange => ({
  part: 'speedLimit',
  said: said`Engine stopped at ${speedFigure(rpm)}`,
  edits: [edit('ignition', 'engineSpeedLimit', ENTERED.engineSpeed(rpm))],
  clears: [],
  cost: 0,
  ground: 'measured by you',
  from: said`the curve up to that speed; what it makes above is given up`,
});

/** A name that begins with a figure is its size alone, which is said in the reader's units. */
const named = (name: string, size: Said): Said =>
  /^\d/u.test(name) ? said` of ${size}` : said` “${name}”, ${size}`;

const pressureFigure = (pascal: number) => figureOf(pascal, 'pressureDifference', { decimals: 0 });

/** Pumps are told in litres an hour everywhere. */
const LITRES = { units: { us: 'L/h', si: 'L/h' }, decimals: 0 };

/** Injectors that pass what the rung burns. As many as are there, or as they were told with. */
export function injectorsChange({ injectors, name, cost }: ReachInput['injectors'][number]): ReachChange {
  const { flow, ratedPressure, deadTime, count } = injectors;
  return {
    part: 'injectors',
    said: said`${count} injectors${named(name, said`${figureOf(flow, 'massFlow', { decimals: 0 })} at ${pressureFigure(ratedPressure)}`)}`,
    edits: [
      edit('fuelSystem', 'injectors', `${count}`),
      edit('fuelSystem', 'injectorFlow', ENTERED.massFlow(flow)),
      edit('fuelSystem', 'injectorFlowPressure', ENTERED.pressure(ratedPressure)),
      edit(
        'fuelSystem',
        'injectorDeadTime',
        deadTime === null ? null : `${ENTERED.number(deadTime * 1000)} ms`,
      ),
    ],
    clears: [],
    cost,
    ground: 'rule of thumb',
    from: said`the smallest of the parts list that pass the fuel of this way`,
  };
}

export function pumpChange({ pump, cost }: ReachInput['pumps'][number]): ReachChange {
  const [point] = pump.points;
  return {
    part: 'pump',
    said:
      point === undefined
        ? said`Fuel pump “${pump.name}”`
        : said`Fuel pump${named(pump.name, said`${figureOf(point.flow, 'volumeFlow', LITRES)} at ${pressureFigure(point.pressure)}`)}`,
    edits: [
      edit('fuelSystem', 'pump', pump.name),
      ...(point === undefined
        ? []
        : [
            edit('fuelSystem', 'pumpFlow', `${ENTERED.number(point.flow * 3.6e6)} L/h`),
            edit('fuelSystem', 'pumpFlowPressure', ENTERED.pressure(point.pressure)),
            edit('fuelSystem', 'pumpVoltage', `${ENTERED.number(pump.ratedVoltage)} V`),
          ]),
    ],
    clears: [],
    cost,
    ground: 'rule of thumb',
    from: said`the smallest of the parts list that gives the fuel of this way at its pressure`,
  };
}

export const beltChange = ({ ribs, cost }: ReachInput['beltRibs'][number]): ReachChange => ({
  part: 'belt',
  said: said`Belt of ${ribs} ribs, with its pulleys`,
  edits: [edit('drive', 'beltRibs', `${ribs}`)],
  clears: [],
  cost,
  ground: 'rule of thumb',
  from: said`the fewest ribs of the parts list that hold what the drive pulls`,
});
