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

test.each(['Gear', 'Wheel speed', 'T0001', 'Notes', 'Exhaust back pressure', 'Vibration'])(
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
    expect(reading.remarks[0]).toMatchObject({ code: 'units-contradict-figures', column: 3 });
    expect(reading.remarks[0]?.message).toContain('with lb-ft and hp power is torque × engine speed');
  });

  test('power that carries a factor torque does not is told (rule V01)', () => {
    const reading = table('rpm,Torque [Nm],Power [kW]', (speed) => [
      speed,
      300,
      ((1.021 * 300 * speed) / 9549.2966).toFixed(3),
    ]);
    expect(reading.remarks[0]?.code).toBe('power-is-not-torque-times-speed');
    expect(reading.remarks[0]?.message).toContain('1.0210 times');
  });

  test('the observed torque is taken before the corrected one', () => {
    const reading = table('rpm,Corrected torque [Nm],Torque [Nm]', (speed) => [speed, 310, 300]);
    expect(guesses(reading)).toEqual(['engineSpeed rpm', 'other Nm', 'torque N·m']);
  });

  test('a corrected torque alone is taken, and says so', () => {
    const reading = table('rpm,Corrected torque [Nm]', (speed) => [speed, 310]);
    expect(guesses(reading)).toEqual(['engineSpeed rpm', 'torque N·m']);
    expect(reading.remarks.map(({ code }) => code)).toEqual(['carries-correction']);
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
    expect(reading.remarks.map(({ code }) => code)).toEqual(['boost-may-be-absolute']);
  });

  test('in a file of US units a torque without unit is lb-ft', () => {
    const reading = table('rpm,Torque,Oil temp [°F],Oil pressure [psi]', (speed) => [speed, 300, 190, 60]);
    expect(guesses(reading)[1]).toBe('torque lb-ft');
    expect(reading.columns[1]?.guess.why).toContain('Confirm it');
  });
});
