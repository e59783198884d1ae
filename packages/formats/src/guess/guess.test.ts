import { describe, expect, test } from 'vitest';
import { readingOf } from '../test-bytes.ts';
import { meaningFromName } from './column-words.ts';
import { nameAndUnit } from './header-unit.ts';
import { powerIdentity } from './power-identity.ts';

test.each([
  ['Torque [Nm]', 'Torque', 'Nm'],
  ['Torque (N·m)', 'Torque', 'N·m'],
  ['Torque, Nm', 'Torque', 'Nm'],
  ['Torque / Nm', 'Torque', 'Nm'],
  ['Leistung in kW', 'Leistung', 'kW'],
  ['torque_Nm', 'torque', 'Nm'],
  ['fuel_flow_kg_h', 'fuel_flow', 'kg/h'],
  ['Speed \r\n(RPM)', 'Speed', 'RPM'],
  ['RPM', 'RPM', 'RPM'],
  ['Engine RPM', 'Engine RPM', 'RPM'],
  ['Boost (bar(g))', 'Boost', 'bar(g)'],
  ['oil_temp_C', 'oil_temp', 'C'],
  ['Torque (corrected) (Nm)', 'Torque (corrected)', 'Nm'],
  ['Torque (corrected)', 'Torque (corrected)', ''],
  ['Lambda [-]', 'Lambda', ''],
  ['fuel ratio', 'fuel ratio', ''],
  ['EGT_1', 'EGT_1', ''],
  ['', '', ''],
])('header %j is %j in %j', (header, name, unitText) => {
  expect(nameAndUnit(header)).toEqual({ name, unitText });
});

test.each([
  ['Engine speed', 'engineSpeed'],
  ['n_mot', 'engineSpeed'],
  ['Motordrehzahl', 'engineSpeed'],
  ['Régime moteur', 'engineSpeed'],
  ['velocidad del motor', 'engineSpeed'],
  ['Drehmoment', 'torque'],
  ['couple', 'torque'],
  ['Par motor', 'torque'],
  ['Leistung', 'power'],
  ['Potencia', 'power'],
  ['MAP', 'manifoldPressure'],
  ['Intake manifold pressure', 'manifoldPressure'],
  ['Boost', 'boost'],
  ['Ladedruck', 'boost'],
  ['Compressor outlet pressure', 'dischargePressure'],
  ['Blower discharge temp', 'dischargeTemperature'],
  ['Ladelufttemperatur', 'chargeTemperature'],
  ['IAT', 'inletAirTemperature'],
  ['Wassertemperatur', 'coolantTemperature'],
  ['ECT', 'coolantTemperature'],
  ['Oil pressure', 'oilPressure'],
  ['Öldruck', 'oilPressure'],
  ['Fuel pressure', 'fuelPressure'],
  ['FuelFlow', 'fuelFlow'],
  ['Débit carburant', 'fuelFlow'],
  ['MAF', 'airFlow'],
  ['EGT 3', 'exhaustTemperature'],
  ['A/F', 'airFuelRatio'],
  ['λ left', 'lambda'],
  ['Spark advance', 'sparkAdvance'],
  ['TPS', 'throttle'],
  ['Drosselklappe', 'throttle'],
  ['Impeller speed', 'impellerSpeed'],
  ['Barometric pressure', 'barometer'],
  ['RH', 'relativeHumidity'],
  ['Correction factor', 'correctionFactor'],
  ['Battery volts', 'batteryVoltage'],
  ['Crankcase vacuum', 'crankcasePressure'],
  ['Elapsed time', 'time'],
  ['Target lambda', 'other'],
  ['BSFC', 'other'],
])('%s means %s', (name, meaning) => expect(meaningFromName(name)?.meaning).toBe(meaning));

test.each(['Gear', 'T0001', 'Notes', 'Exhaust back pressure', 'Vibration'])(
  '%s means nothing known',
  (name) => expect(meaningFromName(name)).toBeNull(),
);

describe('power = torque × engine speed tells the units', () => {
  const speed = Float64Array.from({ length: 30 }, (_, row) => 2000 + row * 150);
  const torque = speed.map((value) => Number((400 - ((value - 4500) / 250) ** 2).toFixed(1)));
  // Constants of section "units" in the check values: 33000/(2π), 60000/(2π), 60·735.49875/(2π), from the definitions.
  test.each([
    [5252.113122, 'lb-ft', 'hp'],
    [9549.296586, 'N·m', 'kW'],
    [7023.495702, 'N·m', 'PS'],
    [7120.910214, 'N·m', 'hp'], // 745.69987158227 × 60 / (2π)
    [7043.206107, 'lb-ft', 'kW'], // 60000 / (2π) / 1.3558179483314
    [5180.265, 'lb-ft', 'PS'], // 7023.495702 / 1.3558179483314
  ])('÷ %d: %s and %s', (divisor, torqueUnit, powerUnit) => {
    const power = torque.map((value, row) => Number(((value * speed[row]!) / divisor).toFixed(1)));
    expect(powerIdentity(speed, torque, power)?.pairs).toEqual([{ torqueUnit, powerUnit }]);
  });

  test('a power that is no constant times torque × speed has no pair', () => {
    expect(
      powerIdentity(
        speed,
        torque,
        speed.map((value) => value / 30),
      ),
    ).toBeNull();
  });
});

describe('units and meanings of a whole file', () => {
  const table = (header: string, row: (speed: number) => (number | string)[]) =>
    readingOf(
      `${header}\n${[2000, 3000, 4000, 5000, 6000].map((speed) => row(speed).join(',')).join('\n')}\n`,
    );
  const guesses = (reading: ReturnType<typeof table>) =>
    reading.columns.map(({ guess }) => `${guess.meaning} ${guess.unit}`.trim());

  test('stated units that contradict the figures are told (rule V02)', () => {
    const reading = table('rpm,Torque [Nm],Power [kW]', (speed) => [
      speed,
      300,
      ((300 * speed) / 5252.113).toFixed(2),
    ]);
    expect(guesses(reading)).toEqual(['engineSpeed rpm', 'torque N·m', 'power kW']);
    expect(reading.questions[0]).toMatchObject({ code: 'units-contradict-figures', column: 3 });
    expect(reading.questions[0]?.message).toContain('with lb-ft and hp power is torque × engine speed');
  });

  test('power that carries a factor torque does not is told (rule V01)', () => {
    const reading = table('rpm,Torque [Nm],Power [kW]', (speed) => [
      speed,
      300,
      ((1.021 * 300 * speed) / 9549.2966).toFixed(3),
    ]);
    expect(reading.questions[0]?.code).toBe('power-is-not-torque-times-speed');
    expect(reading.questions[0]?.message).toContain('1.0210 times');
  });

  test('the observed torque is taken before the corrected one', () => {
    const reading = table('rpm,Corrected torque [Nm],Torque [Nm]', (speed) => [speed, 310, 300]);
    expect(guesses(reading)).toEqual(['engineSpeed rpm', 'other Nm', 'torque N·m']);
  });

  test('a corrected torque alone is taken, and says so', () => {
    const reading = table('rpm,Corrected torque [Nm]', (speed) => [speed, 310]);
    expect(guesses(reading)).toEqual(['engineSpeed rpm', 'torque N·m']);
    expect(reading.questions.map(({ code }) => code)).toEqual(['carries-correction']);
  });

  test.each([
    ['MAP [kPa]', [101, 105, 120, 140, 160], 'manifoldPressure kPa'],
    ['MAP [psi]', [0.2, 1.1, 3.0, 5.5, 8.1], 'boost psi'],
    ['MAP [psia]', [14.7, 15.1, 18, 21, 24], 'manifoldPressure psi'],
    ['Boost [bar]', [0.1, 0.2, 0.4, 0.6, 0.8], 'boost bar'],
    ['Boost [kPa abs]', [101, 110, 120, 140, 160], 'manifoldPressure kPa'],
    ['Boost', [0.1, 0.2, 0.4, 0.6, 0.8], 'boost bar'],
    ['Boost', [2, 5, 20, 40, 60], 'boost kPa'],
  ])('%s from %j is %s', (name, values, meaning) => {
    const reading = table(`rpm,Torque [Nm],${name}`, (speed) => [
      speed,
      300,
      values[speed / 1000 - 2] as number,
    ]);
    expect(guesses(reading)[2]).toBe(meaning);
  });

  test('boost that never nears zero is told to look absolute', () => {
    const reading = table('rpm,Torque [Nm],Boost [kPa]', (speed) => [speed, 300, 90 + speed / 100]);
    expect(reading.questions.map(({ code }) => code)).toEqual(['boost-may-be-absolute']);
  });

  test('in a file of US units a torque without unit is lb-ft', () => {
    const reading = table('rpm,Torque,Oil temp [°F],Oil pressure [psi]', (speed) => [speed, 300, 190, 60]);
    expect(guesses(reading)[1]).toBe('torque lb-ft');
    expect(reading.columns[1]?.guess.why).toContain('Confirm it');
  });

  test.each([
    // 1 cm³/min, 1 L/h, 1 US gal/h = 3.785 411 784 L/h, 1 ft³ = 0.028 316 846 592 m³: NIST SP 811 (digits from memory).
    ['Fuel flow [cc/min]', 'fuelVolumeFlow cm³/min'],
    ['Fuel flow [L/h]', 'fuelVolumeFlow L/h'],
    ['Fuel flow [gal/h]', 'fuelVolumeFlow gal/h'],
    ['Fuel flow [kg/h]', 'fuelFlow kg/h'],
    ['Air flow [cfm]', 'airVolumeFlow cfm'],
    ['Air flow [m3/h]', 'airVolumeFlow m³/h'],
    ['Air flow [kg/h]', 'airFlow kg/h'],
    // Standard air differs from meter to meter: no unit until somebody states it.
    ['Air flow [scfm]', 'other scfm'],
  ])('%s is %s: a volume is no mass without its density', (name, meaning) => {
    const reading = table(`rpm,Torque [Nm],${name}`, (speed) => [speed, 300, speed / 20]);
    expect(guesses(reading)[2]).toBe(meaning);
  });

  test('probes of one meaning all keep it, with their names', () => {
    const reading = table('rpm,Torque [Nm],EGT 1 [°C],EGT 2 [°C],Lambda left,Lambda right', (speed) => [
      speed,
      300,
      700 + speed / 100,
      710 + speed / 100,
      0.82,
      0.84,
    ]);
    expect(guesses(reading).slice(2)).toEqual([
      'exhaustTemperature °C',
      'exhaustTemperature °C',
      'lambda λ',
      'lambda λ',
    ]);
  });

  test.each([
    ['AFR', 12.6, 'airFuelRatio :1'],
    ['AFR', 0.86, 'lambda λ'],
    ['Lambda', 0.86, 'lambda λ'],
    ['Lambda', 12.6, 'airFuelRatio :1'],
  ])('%s of %d is %s', (name, value, meaning) => {
    const reading = table(`rpm,Torque [Nm],${name}`, (speed) => [speed, 300, value + speed / 1e6]);
    expect(guesses(reading)[2]).toMatch(meaning.replace(' :1', ''));
  });

  test.each([
    // 4000 rpm in 12 s is 333 rpm/s; as 12 000 s it would be 0.3 rpm/s.
    ['a log', [0, 3000, 6000, 9000, 12_000], 'time ms'],
    ['a log', [0, 3, 6, 9, 12], 'time s'],
    // 4000 rpm in 60 s is 67 rpm/s; as 60 ms it would be 67 000 rpm/s, though the steps are of 15.
    ['a step test', [0, 15, 30, 45, 60], 'time s'],
    // 4000 rpm in 0.2 s would be 20 000 rpm/s; in 0.2 min it is 333 rpm/s.
    ['a log', [0, 0.05, 0.1, 0.15, 0.2], 'time min'],
  ])('a time of %s without unit, %j, is %s', (_, times, meaning) => {
    const reading = table('Time,rpm,Torque [Nm]', (speed) => [times[speed / 1000 - 2]!, speed, 300]);
    expect(guesses(reading)[0]).toBe(meaning);
  });

  test.each([
    // 200 °C would be too hot for oil, 200 °F is 93 °C; 95 °F would be a cold engine, 95 °C is a warm one.
    ['Oil temp', 200, 'oilTemperature °F'],
    ['Oil temp', 95, 'oilTemperature °C'],
    // 1350 °C melts the probe, 1350 °F is 732 °C.
    ['EGT', 1350, 'exhaustTemperature °F'],
    ['EGT', 780, 'exhaustTemperature °C'],
    // 4 bar, 58 psi, 400 kPa of oil pressure.
    ['Oil pressure', 4, 'oilPressure bar'],
    ['Oil pressure', 400, 'oilPressure kPa'],
  ])('%s of %d without unit is %s', (name, value, meaning) => {
    const reading = table(`rpm,Torque [Nm],${name}`, (speed) => [speed, 300, value + speed / 1e4]);
    expect(guesses(reading)[2]).toBe(meaning);
  });

  test('two pairs of units that fit alike are asked for, both by name', () => {
    // N·m with PS is ÷ 7023.5, lb-ft with kW ÷ 7043.2, 0.28 % apart: ÷ 7033.3 lies in the middle.
    const reading = table('rpm,torque,power', (speed) => [
      speed,
      (300 + speed / 100).toFixed(1),
      (((300 + speed / 100) * speed) / 7033.35).toFixed(1),
    ]);
    const asked = reading.questions.find(({ code }) => code === 'units-ambiguous');
    expect(asked?.message).toMatch(/N·m with PS \(7023\.5\)/);
    expect(asked?.message).toMatch(/lb-ft with kW \(7043\.2\)/);
  });

  test.each([
    // ÷ 5252.113 lb-ft and hp; ÷ 5180.265 lb-ft and metric hp; ÷ 7023.496 N·m and metric hp; ÷ 9549.297 N·m and kW;
    // ÷ 716.197 kgf·m and metric hp = 60 · 75 / (2π), from the metric horsepower of 75 kgf·m/s.
    [5252.113, 'torque lb-ft', 'power hp'],
    [5180.265, 'torque lb-ft', 'power PS'],
    [7023.496, 'torque N·m', 'power PS'],
    [9549.297, 'torque N·m', 'power kW'],
    [716.197, 'torque kgf·m', 'power PS'],
  ])('without units, ÷ %d is %s and %s', (divisor, torque, power) => {
    const reading = table('rpm,torque,power', (speed) => [
      speed,
      (300 + speed / 100).toFixed(2),
      (((300 + speed / 100) * speed) / divisor).toFixed(2),
    ]);
    expect(guesses(reading).slice(1)).toEqual([torque, power]);
    expect(reading.questions).toEqual([]);
  });
});
