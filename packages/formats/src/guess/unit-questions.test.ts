import { expect, test } from 'vitest';
import { readingOf } from '../test-bytes.ts';

const speeds = Array.from({ length: 12 }, (_, row) => 2000 + 400 * row);
const table = (header: string, of: (speed: number) => (number | string)[]) =>
  readingOf([header, ...speeds.map((speed) => of(speed).join(','))].join('\n'));
const asked = (reading: ReturnType<typeof table>) =>
  reading.questions.map(({ code, column }) => `${code} ${column}`);
const meanings = (reading: ReturnType<typeof table>) =>
  reading.columns.map(({ guess }) => `${guess.meaning} ${guess.unit}`.trim());

test('a torque without a unit is asked for, since pound-feet would do as well', () => {
  const reading = table('rpm,Torque', (speed) => [speed, 300 + speed / 100]);
  expect(asked(reading)).toEqual(['unit-not-named 2']);
  expect(reading.questions[0]?.message).toMatch(/N·m is taken, lb-ft would fit as well/);
});

test('a torque whose unit follows from the power is not asked for', () => {
  const reading = table('rpm,Torque,Power [kW]', (speed) => [
    speed,
    300,
    ((300 * speed) / 9549.2966).toFixed(3),
  ]);
  expect(asked(reading)).toEqual([]);
  expect(meanings(reading)[1]).toBe('torque N·m');
});

test('a torque that no pair of units explains beside its power is asked for', () => {
  const reading = table('rpm,Torque,Power [kW]', (speed) => [
    speed,
    90,
    ((300 * speed) / 9549.2966).toFixed(3),
  ]);
  expect(asked(reading)).toContain('units-contradict-figures 3');
});

test('a vacuum without a minus sign is no pressure above the air around', () => {
  const without = table('rpm,Torque [Nm],Manifold vacuum [inHg]', (speed) => [speed, 300, 2 - speed / 6000]);
  expect(asked(without)).toEqual(['vacuum-without-sign 3']);
  expect(meanings(without)[2]).toBe('other inHg');
  const signed = table('rpm,Torque [Nm],Manifold vacuum [inHg]', (speed) => [speed, 300, speed / 6000 - 2]);
  expect(asked(signed)).toEqual([]);
  expect(meanings(signed)[2]).toBe('boost inHg');
});

test('a manifold pressure of 15 to 22 without a unit is psi, not inches of mercury', () => {
  const reading = table('rpm,Torque [lb-ft],MAP', (speed) => [speed, 220, (13.5 + speed / 700).toFixed(1)]);
  expect(meanings(reading)[2]).toBe('manifoldPressure psi');
});

test('of two torques that are named alike one is taken, and asked for', () => {
  expect(asked(table('rpm,Torque 1 [Nm],Torque 2 [Nm]', (speed) => [speed, 300, 150]))).toEqual([
    'meaning-ambiguous 2',
  ]);
});

test('a multiplier in the name of a column is asked for', () => {
  expect(asked(table('rpm,Torque x10 [Nm]', (speed) => [speed, 30]))).toEqual(['multiplier-in-name 2']);
});

test.each([
  ['Wheel RPM,Engine RPM,Torque [Nm]', 'other RPM, engineSpeed rpm, torque N·m'],
  ['rpm,Friction torque [Nm],Torque [Nm]', 'engineSpeed rpm, other Nm, torque N·m'],
  ['rpm,Wheel torque [Nm],Engine torque [Nm]', 'engineSpeed rpm, other Nm, torque N·m'],
  ['rpm,Torque [Nm],Oil [°C]', 'engineSpeed rpm, torque N·m, oilTemperature °C'],
  ['rpm,Torque [Nm],Gearbox oil temp [°C]', 'engineSpeed rpm, torque N·m, other °C'],
  ['rpm,Torque [Nm],Brake water temp [°C]', 'engineSpeed rpm, torque N·m, other °C'],
  ['rpm,Torque [Nm],Intercooler water temp [°C]', 'engineSpeed rpm, torque N·m, other °C'],
  ['rpm,Torque [Nm],Temp. acqua [°C]', 'engineSpeed rpm, torque N·m, coolantTemperature °C'],
])('%s is %s', (header, expected) => {
  const isWheel = header.startsWith('Wheel');
  const reading = table(header, (speed) => (isWheel ? [speed / 4, speed, 300] : [speed, 60, 80]));
  expect(meanings(reading).join(', ')).toBe(expected);
});
