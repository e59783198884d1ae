import type { QuantityKind } from '../quantity/index.ts';
import type { DerivedFigure, SectionId } from './model.ts';
import { FLOW_SHEET, LIFT_CURVE, type TableShape } from './table-shapes.ts';

/** How one entry is read, be it a line of a section or of a table. */
export interface SheetEntry {
  field: string;
  /** As shown, without its section: `Intake duration`. */
  label: string;
  /** Kinds accepted, the usual one first: injector flow is a mass flow or a volume flow. */
  kinds: readonly [QuantityKind | 'text' | 'count' | 'table', ...QuantityKind[]];
  /** A value as a person would enter it. */
  example: string;
  /**
   * Inside unit of the first kind. Outside: impossible on an engine brake, so a slip of the unit, and refused.
   * Wide on purpose, for people build odd engines. Common practice, no source. `null`: not limited.
   */
  allowed: readonly [low: number, high: number] | null;
  /** Outside: kept, with a caution. Common practice, no source. `null`: no opinion. */
  usual: readonly [low: number, high: number] | null;
  /** Texts the program understands; another text is kept with a note. Empty: any text. */
  understood: readonly string[];
}

/** One field that a combination sheet knows. */
export interface SheetField extends SheetEntry {
  section: SectionId;
  /** Derived figures that cannot be had without it. */
  neededFor: readonly DerivedFigure['id'][];
  /** What it holds where its kind is `table`; else `null`. */
  table: TableShape | null;
}

type Range = readonly [low: number, high: number];
type Extra = Partial<Pick<SheetField, 'usual' | 'understood' | 'neededFor'>>;
type Line = Omit<SheetField, 'section'>;

const MM = 1e-3;
const CM3 = 1e-6;
const DEGREE = Math.PI / 180;

function line(
  field: string,
  label: string,
  kinds: SheetField['kinds'],
  example: string,
  allowed: Range | null,
  { usual = null, understood = [], neededFor = [] }: Extra = {},
): Line {
  return { field, label, kinds, example, allowed, usual, understood, neededFor, table: null };
}

const table = (field: string, label: string, shape: TableShape): Line => ({
  ...line(field, label, ['table'], shape.example, null),
  table: shape,
});

const text = (field: string, label: string, example: string, understood: readonly string[] = []): Line =>
  line(field, label, ['text'], example, null, { understood });
const count = (field: string, label: string, example: string, allowed: Range, extra?: Extra): Line =>
  line(field, label, ['count'], example, allowed, extra);
const ratio = (field: string, label: string, example: string, allowed: Range, extra?: Extra): Line =>
  line(field, label, ['ratio'], example, allowed, extra);
const scaled = (range: Range, unit: number): Range => [range[0] * unit, range[1] * unit];
const length = (field: string, label: string, example: string, allowedMm: Range, extra: Extra = {}): Line =>
  line(field, label, ['length'], example, scaled(allowedMm, MM), extra);
const volume = (field: string, label: string, example: string, allowedCm3: Range, extra: Extra = {}): Line =>
  line(field, label, ['volume'], example, scaled(allowedCm3, CM3), extra);
const angle = (field: string, label: string, example: string, allowedDegrees: Range, usual?: Range): Line =>
  line(field, label, ['angle'], example, scaled(allowedDegrees, DEGREE), {
    usual: usual ? scaled(usual, DEGREE) : null,
  });

const LINES: Record<SectionId, readonly Line[]> = {
  shortBlock: [
    text('block', 'Block', 'cast iron, four-bolt main caps'),
    text('configuration', 'Configuration', 'straight six'),
    count('cylinders', 'Cylinders', '6', [1, 48], {
      usual: [1, 16],
      neededFor: ['displacement'],
    }),
    volume('displacement', 'Displacement as stated', '3.8 L', [1, 2_000_000], {
      usual: scaled([45, 16_000], CM3),
    }),
    length('bore', 'Bore', '96 mm', [10, 1000], {
      usual: scaled([35, 170], MM),
      neededFor: ['displacement', 'cylinderDisplacement', 'boreToStroke'],
    }),
    length('stroke', 'Stroke', '88 mm', [10, 2000], {
      usual: scaled([30, 180], MM),
      neededFor: ['displacement', 'cylinderDisplacement', 'meanPistonSpeed', 'boreToStroke', 'rodToStroke'],
    }),
    length('rodLength', 'Rod length', '150 mm', [15, 4000], {
      usual: scaled([60, 320], MM),
      neededFor: ['rodToStroke'],
    }),
    ratio('compressionRatio', 'Compression ratio', '9.8:1', [1.5, 40], { usual: [6, 18] }),
    length('deckHeight', 'Deck height', '230 mm', [20, 6000]),
    length('deckClearance', 'Piston below deck', '0.2 mm', [-20, 50], { usual: scaled([-1.5, 3], MM) }),
    length('gasketBore', 'Gasket bore', '98 mm', [10, 1050]),
    length('gasketThickness', 'Gasket thickness', '1.2 mm', [0, 20], { usual: scaled([0.3, 3.5], MM) }),
    volume('pistonDishVolume', 'Piston dish (a dome is negative)', '4 cm3', [-20_000, 20_000], {
      usual: scaled([-60, 80], CM3),
    }),
    text('pistons', 'Pistons', 'forged, flat top'),
    text('rods', 'Rods', 'forged steel'),
    text('crankshaft', 'Crankshaft', 'forged steel, counterweighted'),
    text('mainCaps', 'Main bearing caps', 'four-bolt', ['two-bolt', 'four-bolt']),
    line('powerLimit', 'Power the short block is trusted with', ['power'], '450 kW', [100, 2e7]),
    line('boostLimit', 'Boost it is trusted with', ['gaugePressure'], '1 bar', [100, 2e6]),
    length('topRingGap', 'Top ring gap', '0.45 mm', [0, 20]),
    length('secondRingGap', 'Second ring gap', '0.5 mm', [0, 20]),
    text('notes', 'Notes', 'deck machined 0.1 mm'),
  ],
  heads: [
    text('type', 'Type', 'aluminium, ported'),
    volume('chamberVolume', 'Chamber volume', '64 cm3', [0.1, 100_000], { usual: scaled([10, 160], CM3) }),
    count('valvesPerCylinder', 'Valves per cylinder', '2', [2, 6]),
    length('intakeValveDiameter', 'Intake valve diameter', '46 mm', [3, 500]),
    length('exhaustValveDiameter', 'Exhaust valve diameter', '38 mm', [3, 500]),
    text('ports', 'Ports', 'ported, flow-tested'),
    ratio('rockerRatio', 'Rocker ratio', '1.6', [0.5, 4], { usual: [1, 2] }),
    ratio('rockerRatioExhaust', 'Rocker ratio of the exhaust, where it differs', '1.5', [0.5, 4], {
      usual: [1, 2],
    }),
    text('springs', 'Valve springs', 'double'),
    line('springSeatLoad', 'Load of an intake spring on its seat', ['force'], '550 N', [10, 1e5], {
      usual: [100, 2500],
    }),
    text('headFasteners', 'Head fasteners', 'studs', ['production bolts', 'studs']),
    text('headGasket', 'Head gasket', 'multi-layer steel', ['composition', 'multi-layer steel', 'copper']),
    table('flowIntake', 'Flow sheet, intake', FLOW_SHEET),
    table('flowExhaust', 'Flow sheet, exhaust', FLOW_SHEET),
    text('notes', 'Notes', 'valve job renewed'),
  ],
  cam: [
    text('profile', 'Profile', 'flat tappet, road grind'),
    text('follower', 'Follower', 'flat tappet'),
    angle('durationIntake', 'Intake duration', '224 deg', [60, 450], [160, 340]),
    angle('durationExhaust', 'Exhaust duration', '230 deg', [60, 450], [160, 340]),
    length('durationLift', 'Lift at which durations are told', '1 mm', [0, 5]),
    length('liftIntake', 'Intake valve lift', '11.2 mm', [0.5, 100], { usual: scaled([4, 26], MM) }),
    length('liftExhaust', 'Exhaust valve lift', '11.2 mm', [0.5, 100], { usual: scaled([4, 26], MM) }),
    angle('lobeSeparation', 'Lobe separation', '112 deg', [60, 150], [98, 122]),
    angle('intakeCentreline', 'Intake centreline as fitted', '108 deg', [60, 150], [95, 125]),
    angle('advance', 'Advance', '4 deg', [-40, 40], [-12, 12]),
    length('lashIntake', 'Intake lash', '0.3 mm', [0, 5]),
    length('lashExhaust', 'Exhaust lash', '0.35 mm', [0, 5]),
    angle('intakeOpens', 'Intake opens before top dead centre', '32 deg', [-180, 180], [-40, 80]),
    angle('intakeCloses', 'Intake closes after bottom dead centre', '64 deg', [-180, 180], [-10, 110]),
    angle('exhaustOpens', 'Exhaust opens before bottom dead centre', '75 deg', [-180, 180], [-10, 120]),
    angle('exhaustCloses', 'Exhaust closes after top dead centre', '27 deg', [-180, 180], [-40, 80]),
    length('eventsLift', 'Lift at which events are told, where not that of the durations', '1 mm', [0, 5]),
    length('lobeLiftIntake', 'Intake lobe lift', '7.2 mm', [0.3, 60], { usual: scaled([3, 18], MM) }),
    length('lobeLiftExhaust', 'Exhaust lobe lift', '7.2 mm', [0.3, 60], { usual: scaled([3, 18], MM) }),
    table('liftCurveIntake', 'Lift curve, intake', LIFT_CURVE),
    table('liftCurveExhaust', 'Lift curve, exhaust', LIFT_CURVE),
    text('notes', 'Notes', 'degreed by the builder'),
  ],
  intake: [
    text('manifold', 'Manifold', 'individual runners, 350 mm'),
    length('runnerLength', 'Runner length', '350 mm', [5, 5000]),
    length('runnerDiameter', 'Runner diameter', '44 mm', [3, 500]),
    volume('plenumVolume', 'Plenum volume', '4 L', [1, 1_000_000]),
    text('carburettor', 'Carburettor', 'four-barrel'),
    count('throttles', 'Throttles', '1', [1, 48]),
    length('throttleDiameter', 'Throttle diameter', '75 mm', [3, 500]),
    line(
      'throttleLoss',
      'Pressure lost in throttle or carburettor',
      ['pressureDifference'],
      '2 kPa',
      [0, 1e5],
    ),
    line('throttleLossFlow', 'Air flow at which that is told', ['massFlow'], '0.3 kg/s', [1e-4, 50]),
    line('carburettorFlow', 'Carburettor flow as rated', ['volumeFlow'], '600 cfm', [1e-4, 10]),
    line(
      'carburettorFlowPressure',
      'Pressure at which carburettor flow is rated',
      ['pressureDifference'],
      '1.5 inHg',
      [100, 1e5],
    ),
    text('airFilter', 'Air filter', 'none'),
    line('filterLoss', 'Pressure lost in filter and inlet pipe', ['pressureDifference'], '1 kPa', [0, 1e5]),
    line('filterLossFlow', 'Air flow at which that is told', ['massFlow'], '0.3 kg/s', [1e-4, 50]),
    text('notes', 'Notes', 'bell mouths'),
  ],
  exhaust: [
    text('headers', 'Headers', 'six into two'),
    length('primaryLength', 'Primary length', '820 mm', [10, 10_000]),
    length('primaryDiameter', 'Primary diameter', '42 mm', [3, 500]),
    length('collectorLength', 'Collector length', '400 mm', [10, 10_000]),
    length('collectorDiameter', 'Collector diameter', '63 mm', [3, 1000]),
    length('pipeDiameter', 'Pipe diameter', '76 mm', [3, 1000]),
    text('silencer', 'Silencer', 'none'),
    line('backPressure', 'Back pressure at full power', ['pressureDifference'], '10 kPa', [0, 5e5]),
    text('notes', 'Notes', 'cell extraction on'),
  ],
  fuelSystem: [
    text('type', 'Type', 'port injection', [
      'carburettor',
      'blow-through carburettor',
      'port injection',
      'direct injection',
      'throttle-body injection',
    ]),
    count('injectors', 'Injectors', '6', [1, 96]),
    line('injectorFlow', 'Injector flow', ['massFlow', 'volumeFlow'], '42 lb/h', null),
    line(
      'injectorFlowPressure',
      'Pressure at which injector flow is told',
      ['pressureDifference'],
      '3 bar',
      [1e3, 5e8],
    ),
    line('injectorDeadTime', 'Dead time of the injectors at 13.5 V', ['time'], '1 ms', [0, 0.02], {
      usual: [0.2e-3, 3e-3],
    }),
    line('fuelPressure', 'Fuel pressure at rest', ['pressureDifference'], '3 bar', [1e3, 5e8]),
    text('fuelReference', 'What the fuel pressure is held above', 'manifold', ['manifold', 'open air']),
    text('pump', 'Pump', 'in tank, single'),
    line('pumpFlow', 'Pump flow', ['volumeFlow', 'massFlow'], '250 L/h', [1e-7, 0.1]),
    line(
      'pumpFlowPressure',
      'Pressure at which pump flow is told',
      ['pressureDifference'],
      '4 bar',
      [0, 5e8],
    ),
    line('pumpVoltage', 'Voltage at which pump flow is told', ['voltage'], '13.5 V', [1, 100]),
    line('systemVoltage', 'Voltage at pump and injectors at full load', ['voltage'], '13.5 V', [1, 100]),
    length('lineDiameter', 'Feed line, inside', '9 mm', [1, 100]),
    text('regulator', 'Regulator', 'manifold referenced'),
    text('notes', 'Notes', 'lines renewed'),
  ],
  fuel: [
    text('name', 'Name', 'pump petrol'),
    line('researchOctane', 'Research octane number', ['ratio'], '98', [0, 150]),
    line('motorOctane', 'Motor octane number', ['ratio'], '87', [0, 150]),
    ratio('ethanolShare', 'Ethanol by volume', '5 %', [0, 1]),
    ratio('methanolShare', 'Methanol by volume', '0 %', [0, 1]),
    line('density', 'Density', ['density'], '745 kg/m3', [0.05, 2000], { usual: [600, 1150] }),
    ratio('stoichiometricAirFuelRatio', 'Stoichiometric air-fuel ratio', '14.6', [1, 40], {
      usual: [1.5, 18],
    }),
    line('lambda', 'Lambda at full load', ['ratio'], '0.80', [0.3, 3], { usual: [0.6, 1.15] }),
    text('notes', 'Notes', 'drum opened the same day'),
  ],
  ignition: [
    text('type', 'Type', 'coil on plug'),
    text('plugs', 'Plugs', 'two steps colder than stock'),
    length('plugGap', 'Plug gap', '0.7 mm', [0.05, 5]),
    line('engineSpeedLimit', 'Engine speed at which it is cut', ['engineSpeed'], '6800 rpm', [100, 50_000]),
    line('overRevMargin', 'Engine speed by which that may be overrun', ['engineSpeed'], '200 rpm', [0, 5000]),
    text('notes', 'Notes', 'leads renewed'),
  ],
  supercharger: [
    text('type', 'Type', 'centrifugal', ['centrifugal', 'roots', 'screw', 'turbocharger', 'none']),
    text('unit', 'Unit', 'shop blower no. 2'),
    length('wheelInletDiameter', 'Wheel inlet diameter', '70 mm', [5, 1000]),
    length('wheelExitDiameter', 'Wheel exit diameter', '105 mm', [10, 1500]),
    ratio('stepUp', 'Step-up', '3.6', [0.2, 30], { usual: [1, 16] }),
    line(
      'maximumImpellerSpeed',
      'Highest impeller speed allowed',
      ['engineSpeed'],
      '58000 rpm',
      [100, 500_000],
    ),
    text('map', 'Compressor map, by its name in the book', 'shop blower no. 2'),
    line('ratedFlow', 'Rated air flow', ['massFlow'], '0.5 kg/s', [1e-3, 50]),
    ratio('ratedPressureRatio', 'Rated pressure ratio', '2.0', [1.01, 10]),
    line('ratedSpeed', 'Impeller speed of the rating', ['engineSpeed'], '50000 rpm', [100, 500_000]),
    ratio('ratedEfficiency', 'Efficiency of the rating', '74 %', [0.1, 0.95]),
    count('blades', 'Blades at the wheel exit', '16', [3, 60]),
    angle('backsweep', 'Backsweep at the wheel exit', '35 deg', [-20, 75]),
    ratio('mechanicalEfficiency', 'Mechanical efficiency of gears and bearings', '95 %', [0.5, 1]),
    volume('displacementPerRevolution', 'Displacement per revolution', '1.9 L', [1, 1_000_000]),
    text('bypass', 'Bypass', 'valve to atmosphere'),
    text('bypassAtFullThrottle', 'Bypass at full throttle', 'shut', ['shut', 'open', 'leaking']),
    ratio('bypassLeak', 'Share of the air that leaks past it', '2 %', [0, 0.9]),
    line('pipeLoss', 'Pressure lost in the pipe behind it', ['pressureDifference'], '1 kPa', [0, 1e5]),
    line('pipeLossFlow', 'Air flow at which that is told', ['massFlow'], '0.3 kg/s', [1e-4, 50]),
    text('notes', 'Notes', 'oil changed'),
  ],
  drive: [
    text('type', 'Type', 'ribbed belt', ['ribbed belt', 'v belt', 'toothed belt', 'chain', 'gear', 'direct']),
    length('crankPulleyDiameter', 'Crank pulley diameter', '190 mm', [10, 2000]),
    length('blowerPulleyDiameter', 'Blower pulley diameter', '85 mm', [10, 2000]),
    count('beltRibs', 'Belt ribs', '8', [1, 40]),
    length('beltWidth', 'Belt width', '28 mm', [2, 500]),
    count('crankPulleyTeeth', 'Teeth of the crank pulley', '54', [6, 400]),
    count('blowerPulleyTeeth', 'Teeth of the blower pulley', '30', [6, 400]),
    length('toothPitch', 'Pitch of the teeth', '8 mm', [1, 50]),
    angle('wrapAngle', 'Wrap of the belt about the blower pulley', '165 deg', [10, 360]),
    length('centreDistance', 'Distance of the pulley centres, without an idler', '260 mm', [10, 5000]),
    ratio('slip', 'Creep and slip', '1 %', [0, 0.5]),
    text('tensioner', 'Tensioner', 'sprung'),
    text('notes', 'Notes', 'new belt'),
  ],
  cooler: [
    text('type', 'Type', 'air to water'),
    length('coreLength', 'Core length', '300 mm', [10, 5000]),
    length('coreHeight', 'Core height', '200 mm', [10, 5000]),
    length('coreThickness', 'Core thickness', '90 mm', [2, 2000]),
    ratio('effectiveness', 'Effectiveness', '75 %', [0, 1]),
    line('pressureLoss', 'Pressure loss', ['pressureDifference'], '4 kPa', [0, 5e5]),
    line('pressureLossFlow', 'Air flow at which pressure loss is told', ['massFlow'], '0.3 kg/s', [1e-4, 50]),
    text('coolant', 'Coolant', 'cell water'),
    line('coolantTemperature', 'Coolant as it comes in', ['temperature'], '18 °C', [200, 420]),
    text('notes', 'Notes', 'tank filled with ice'),
  ],
  accessories: [
    text('oil', 'Oil', '10W-40, 6 litres'),
    text('waterPump', 'Water pump', 'electric'),
    text('alternator', 'Alternator', 'none'),
    text('fan', 'Fan', 'none'),
    text('notes', 'Notes', 'damper new'),
  ],
};

/** Closed table of the fields a sheet knows, in the order a sheet is best read. */
export const FIELDS: readonly SheetField[] = Object.entries(LINES).flatMap(([section, lines]) =>
  lines.map((known) => ({ section: section as SectionId, ...known })),
);

/** The example of a field in its plain form, as it would stand on a sheet. */
export function exampleEntry({ example, table }: SheetField): unknown {
  if (table === null) return example;
  const details = table.details.map((detail) => [detail.field, detail.example]);
  return { ...Object.fromEntries(details), points: example };
}

/** Forgives capitals, spaces, hyphens and underscores: `Rod length`, `rod_length` and `rodLength` are one word. */
export function plainName(name: string): string {
  return name.toLowerCase().replace(/[\s_-]+/g, '');
}

/** The known field of that name, or `null`: `fieldNamed('shortBlock', 'rod length')`. */
export function fieldNamed(section: SectionId, name: string): SheetField | null {
  const wanted = plainName(name);
  return FIELDS.find((known) => known.section === section && plainName(known.field) === wanted) ?? null;
}
