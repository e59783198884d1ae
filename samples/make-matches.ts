/** Match files as a person writes them, and some that must be refused. Called by `make-samples.ts`. */
import type { Sample } from './make-samples.ts';

const SHEET = `combination:
  shortBlock:
    configuration: straight six
    cylinders: 6
    bore: 96 mm
    stroke: 88 mm
    compressionRatio: 9.2:1
  fuelSystem:
    type: port injection
  fuel:
    name: pump petrol
  ignition:
    engineSpeedLimit: 6500 rpm
`;

const BLOWER = `  supercharger:
    type: centrifugal
    wheelExitDiameter: 105 mm
    stepUp: 3.6
    maximumImpellerSpeed: 58000 rpm
    bypassAtFullThrottle: shut
  drive:
    type: ribbed belt
    crankPulleyDiameter: 190 mm
    blowerPulleyDiameter: 85 mm
    beltRibs: 8
    slip: 1 %
`;

const COOLER = `  cooler:
    type: air to water
    effectiveness: 70 %
    pressureLoss: 4 kPa
    pressureLossFlow: 0.3 kg/s
    coolantTemperature: 20 °C
`;

const CURVE = `    engine speed [rpm], brake power [kW], air flow [kg/s], friction power [kW]
    2000, 50, 0.0571, 4.0
    2500, 65, 0.0735, 5.6
    3000, 84, 0.0915, 7.6
    3500, 102, 0.1095, 9.9
    4000, 119, 0.1270, 12.5
    4500, 135, 0.1445, 15.5
    5000, 149, 0.1600, 18.9
    5500, 160, 0.1740, 22.8
    6000, 167, 0.1850, 27.2
`;

const BASELINE = `baseline:
  table: |
${CURVE}  weather: { pressure: 99 kPa, temperature: 25 °C, relativeHumidity: 40 % }
`;

const RATED = `map:
  rated:
    flow: 0.24 kg/s
    speed: 48000 rpm
    pressureRatio: 1.5
    efficiency: 74 %
    reference: { pressure: 100 kPa, temperature: 25 °C }
  wheelExitDiameter: 105 mm
  origin: data sheet
`;

export const FROM_A_TABLE = `schemaVersion: 1
name: Straight six with shop blower no. 2
${SHEET}${BLOWER}${COOLER}${BASELINE}map:
  file: ../maps/shop-blower.csv
weather: { pressure: 97 kPa, temperature: 32 °C, relativeHumidity: 50 % }
bands: { draws: 500, seed: 1 }
whatIf:
  - name: smaller blower pulley
    blowerPulleyDiameter: 80 mm
  - name: without the cooler
    cooler: none
  - name: breathes better
    breathing: { from: 2000 rpm, to: 6000 rpm, share: 8 % }
`;

export const FROM_A_RATING = `schemaVersion: 1
name: Straight six, a blower of which only the rating is known
${SHEET}${BLOWER}${BASELINE}${RATED}bands: none
`;

/** What the boosted pull is fitted to is made up: some more boost, some less power than the match alone foretells. */
const FITTED = FROM_A_TABLE.replace('name: Straight six with shop blower no. 2', 'name: Fitted to a boosted pull')
  .replace(/bands:[\s\S]*/, '')
  .concat(`fit:
  table: |
    engine speed [rpm], brake power [kW], boost [kPa], charge temperature [°C]
    3000, 86.9, 10.4, 31
    3500, 109.0, 14.0, 32
    4000, 132.0, 17.9, 34
    4500, 155.4, 22.2, 35
    5000, 178.6, 26.9, 37
    5500, 200.1, 32.0, 39
    6000, 219.3, 38.1, 41
  weather: { pressure: 97 kPa, temperature: 32 °C, relativeHumidity: 50 % }
whatIf:
  - name: next pulley
    blowerPulleyDiameter: 78 mm
bands: { draws: 500, seed: 1 }
`);

/** Everything stated, nothing lost, nothing assumed: what an outside solver can be held against. */
const FOR_AN_OUTSIDE_SOLVER = `schemaVersion: 1
name: Every input stated
${SHEET}${BLOWER}baseline:
  table: |
    engine speed [rpm], brake power [kW], air flow [kg/s], manifold pressure [kPa], manifold temperature [°C]
    3000, 84, 0.0915, 99, 25
    4500, 135, 0.1445, 99, 25
    6000, 167, 0.1850, 99, 25
  weather: { pressure: 99 kPa, temperature: 25 °C, relativeHumidity: 0 % }
map:
  file: ../maps/shop-blower.csv
model:
  displacement: 3.8 L
  compressionRatio: 9.2
  specificHeat: 1005 J/(kg K)
  gasConstant: 287.05 J/(kg K)
  headScale: 1
  efficiencyShift: 0
  constantEfficiency: 70 %
  pulleyRatio: 2.2
  stepUp: 3.6
  slip: 0 %
  mechanicalEfficiency: 100 %
  inletLoss: none
  pipeLoss: none
  throttleLoss: none
  bypass: shut
  cooler: none
  tap: manifold
  heatFactor: 1
  evaporationCooling: 0 K
  wallTemperature: none
  fuelVapour: 0
  swallowingScale: 1
  exhaustPressureRatio: 1
  pressureTerm: none
  heatExponent: 0
  workFactor: 1
  gasExchange: no
  frictionRise: 0
  friction: 12 kW
bands: none
`;

export function matchSamples(): Sample[] {
  const sample = (name: string, about: string, text: string): Sample => ({
    path: `match/${name}`,
    about,
    bytes: new TextEncoder().encode(text),
  });
  const json = {
    schemaVersion: 1,
    name: 'As JSON, its table in columns and rows',
    combination: {
      shortBlock: { cylinders: 6, bore: '96 mm', stroke: '88 mm', compressionRatio: '9.2:1' },
      supercharger: { type: 'centrifugal', wheelExitDiameter: '105 mm', stepUp: '3.6' },
      drive: { type: 'ribbed belt', crankPulleyDiameter: '190 mm', blowerPulleyDiameter: '85 mm' },
    },
    baseline: {
      table: {
        columns: ['engine speed [rpm]', 'brake power [hp]', 'air flow [lb/min]'],
        rows: [
          [3000, 112.6, 12.1],
          [4500, 181, 19.1],
          [6000, 224, 24.5],
        ],
      },
      weather: { pressure: '29.2 inHg', temperature: '77 °F', dewPoint: '52 °F' },
    },
    map: { file: '../maps/us-units.csv' },
    bands: 'none',
  };
  return [
    sample('from-a-table.yaml', 'a match from a table, a map beside it, another day, three what-ifs', FROM_A_TABLE),
    sample('rated-point.yaml', 'a match with a blower of which only one rated point is known', FROM_A_RATING),
    sample('fitted.yaml', 'a match fitted to a boosted pull in a table, and the next pulley', FITTED),
    sample('outside-solver.yaml', 'a match with every input of the model stated', FOR_AN_OUTSIDE_SOLVER),
    sample('columns-and-rows.json', 'a match file as JSON', `${JSON.stringify(json, null, 2)}\n`),
    sample('invalid-misspelt.yaml', 'refused: an input of the model that is misspelt', FROM_A_RATING.replace('bands: none', 'model:\n  slipp: 2 %\nbands: none')),
    sample('invalid-weather.yaml', 'refused: a table without the air it was made in', FROM_A_RATING.replace(/ {2}weather: .*\n/, '')),
    sample('invalid-unit.yaml', 'refused: a flow in kPa', FROM_A_RATING.replace('0.24 kg/s', '0.24 kPa')),
    sample('invalid-pulley-of-zero.yaml', 'refused: a pulley of zero', FROM_A_RATING.replace('85 mm', '0 mm')),
    sample('invalid-cell.yaml', 'refused: a word in the table, named by its line', FROM_A_RATING.replace('3000, 84,', '3000, much,')),
    sample('invalid-reference.yaml', 'refused: a rating whose reference is not told', FROM_A_RATING.replace(/ {4}reference: .*\n/, '')),
  ];
}
