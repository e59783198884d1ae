import { MAP_NAME } from './invented-map.ts';

/** The sheets of the invented engine's combinations, as a tester would write them: YAML with units and origins. */
export interface SheetParts {
  name: string;
  cam: 'base' | 'longer';
  supercharged: boolean;
  /** The first one has 84 mm. Missing: the first. */
  blowerPulley?: '80 mm';
}

/** The sheet of one combination of the engine as it is now. */
export function sheet({ name, cam, supercharged, blowerPulley }: SheetParts): string {
  return [
    `schemaVersion: 1\nname: ${name}`,
    SHORT_BLOCK,
    HEADS,
    cam === 'base' ? BASE_CAM : LONGER_CAM,
    INTAKE,
    EXHAUST,
    supercharged ? fuelSystem('65 lb/h') : fuelSystem('36 lb/h'),
    FUEL,
    IGNITION,
    ...(supercharged ? [SUPERCHARGER, drive(blowerPulley ?? '84 mm'), COOLER] : []),
    ACCESSORIES,
  ].join('\n');
}

/** What is still known of the engine before its rebuild. */
export const SHEET_BEFORE_REBUILD = `schemaVersion: 1
name: Before the rebuild
shortBlock:
  configuration: straight six
  cylinders: 6
  bore: { value: 95.5 mm, origin: remembered }
  stroke: { value: 88 mm, origin: data sheet }
  compressionRatio: unknown
heads:
  chamberVolume: unknown
cam:
  profile: unknown
fuel:
  name: { value: gasoline, origin: remembered }
`;

const SHORT_BLOCK = `shortBlock:
  configuration: straight six
  cylinders: 6
  bore: { value: 96 mm, origin: measured }
  stroke: { value: 88 mm, origin: measured }
  rodLength: { value: 152 mm, origin: data sheet }
  compressionRatio: { value: 9.6, origin: computed }
  deckClearance: { value: 0.5 mm, origin: measured }
  gasketBore: { value: 98 mm, origin: data sheet }
  gasketThickness: { value: 1.2 mm, origin: data sheet }
  pistonDishVolume: { value: 0 cm3, origin: assumed }
  pistons: { value: forged, origin: data sheet }
  rods: { value: forged, origin: data sheet }
  crankshaft: { value: forged steel, origin: data sheet }
  mainCaps: { value: four-bolt, origin: measured }
  powerLimit: { value: 430 kW, origin: remembered }
  topRingGap: unknown`;

const HEADS = `heads:
  valvesPerCylinder: 2
  chamberVolume: { value: 61.4 cm3, origin: measured }
  intakeValveDiameter: { value: 46 mm, origin: measured }
  exhaustValveDiameter: { value: 38 mm, origin: measured }
  springSeatLoad: { value: 620 N, origin: measured }
  headFasteners: { value: studs, origin: measured }
  headGasket: { value: multi-layer steel, origin: data sheet }`;

const BASE_CAM = `cam:
  profile: { value: base cam, origin: data sheet }
  durationIntake: { value: 242 deg, origin: data sheet }
  durationExhaust: { value: 246 deg, origin: data sheet }
  durationLift: { value: 1 mm, origin: data sheet }
  liftIntake: { value: 11.4 mm, origin: measured }
  liftExhaust: { value: 11.2 mm, origin: measured }
  lobeSeparation: { value: 111 deg, origin: data sheet }`;

const LONGER_CAM = `cam:
  profile: { value: 12° longer cam, origin: data sheet }
  durationIntake: { value: 254 deg, origin: data sheet }
  durationExhaust: { value: 258 deg, origin: data sheet }
  durationLift: { value: 1 mm, origin: data sheet }
  liftIntake: { value: 11.9 mm, origin: measured }
  liftExhaust: { value: 11.7 mm, origin: measured }
  lobeSeparation: { value: 111 deg, origin: data sheet }`;

const INTAKE = `intake:
  manifold: plenum with six runners
  runnerLength: { value: 310 mm, origin: measured }
  throttleDiameter: { value: 75 mm, origin: measured }
  airFilter: none`;

const EXHAUST = `exhaust:
  headers: six into two
  primaryDiameter: { value: 42 mm, origin: measured }
  primaryLength: unknown`;

const fuelSystem = (injectorFlow: string): string => `fuelSystem:
  type: port injection
  injectors: 6
  injectorFlow: { value: ${injectorFlow}, origin: data sheet }
  injectorFlowPressure: { value: 3 bar, origin: data sheet }
  fuelPressure: { value: 3 bar, origin: measured }
  fuelReference: { value: manifold, origin: measured }
  pumpFlow: { value: 255 L/h, origin: data sheet }
  pumpFlowPressure: { value: 3 bar, origin: data sheet }
  lineDiameter: { value: 11 mm, origin: measured }`;

const FUEL = `fuel:
  name: { value: gasoline, origin: data sheet }
  researchOctane: { value: 98, origin: data sheet }`;

const IGNITION = `ignition:
  type: coil on plug
  plugGap: { value: 0.7 mm, origin: measured }
  engineSpeedLimit: { value: 6700 rpm, origin: measured }
  overRevMargin: { value: 200 rpm, origin: assumed }`;

const SUPERCHARGER = `supercharger:
  type: centrifugal
  wheelInletDiameter: { value: 84 mm, origin: measured }
  wheelExitDiameter: { value: 124 mm, origin: measured }
  stepUp: { value: 3.6, origin: data sheet }
  maximumImpellerSpeed: { value: 52000 rpm, origin: data sheet }
  map: { value: "${MAP_NAME}", origin: data sheet }
  blades: { value: 20, origin: measured }
  backsweep: { value: 0 deg, origin: measured }
  mechanicalEfficiency: unknown
  bypass: valve to the open
  bypassAtFullThrottle: shut
  pipeLoss: { value: 0.8 kPa, origin: assumed }
  pipeLossFlow: { value: 0.3 kg/s, origin: assumed }`;

const drive = (blowerPulley: string): string => `drive:
  type: ribbed belt
  crankPulleyDiameter: { value: 165 mm, origin: measured }
  blowerPulleyDiameter: { value: ${blowerPulley}, origin: measured }
  beltRibs: 8
  wrapAngle: { value: 165 deg, origin: measured }
  slip: unknown`;

const COOLER = `cooler:
  type: air to water
  coolant: cell water
  coolantTemperature: { value: 26 °C, origin: measured }
  effectiveness: unknown
  pressureLoss: { value: 2.4 kPa, origin: data sheet }
  pressureLossFlow: { value: 0.3 kg/s, origin: data sheet }`;

const ACCESSORIES = `accessories:
  waterPump: electric
  alternator: none
`;
