/**
 * Where public texts contradict each other, and which one wins. Each test holds the loser and the size of the difference, so that a
 * slip to the loser's form fails here.
 */
import { type AirState, airState, CORRECTIONS } from '@pullbook/core/air';
import { absolutePressure, fromInside, ICE_POINT, temperature, toInside } from '@pullbook/core/quantity';
import { expect, test } from 'vitest';

test('J1349: 99 kPa wins over the 29.92 inHg of a mailing-list message of 1995, which gives 1.0234 where the factor is 1', () => {
  const air = dryAir(25, 99_000);
  const inHg = fromInside(air.dryPressure, 'inHg', 'absolutePressure');
  const messageFactor = (29.92 / inHg) * Math.sqrt(fromInside(air.temperature, '°R', 'temperature') / 536.67);
  expect(messageFactor).toBeCloseTo(1.0234, 4);
  expect(CORRECTIONS['sae-j1349'].factor(air)).toBeCloseTo(1, 14);
});

test('J1349: the forum post that prints 990 mbar = 29.92 inHg and a reference of 505 °R contradicts its own metric form', () => {
  expect(fromInside(toInside(990, 'mbar', 'absolutePressure'), 'inHg', 'absolutePressure')).toBeCloseTo(
    29.235,
    3,
  );
  expect(fromInside(toInside(25, '°C', 'temperature'), '°R', 'temperature')).toBeCloseTo(536.67, 10);
  const reference = dryAir(25, 99_000);
  const postInFahrenheit = 1.18 * (29.92 / 29.235) * Math.sqrt(536.67 / 505) - 0.18;
  expect(CORRECTIONS['sae-j1349'].factor(reference)).toBeCloseTo(1, 14);
  expect(postInFahrenheit).toBeGreaterThan(1.05);
});

test('J607: 60 °F wins over the 15 °C of a metric copy, which reads by 288.706/288 higher', () => {
  const air = dryAir(20, 100_000);
  const metricCopy = (101_325 / air.dryPressure) * Math.sqrt(air.temperature / 288);
  expect(metricCopy / CORRECTIONS['sae-j607'].factor(air)).toBeCloseTo(1.00122, 5);
});

test('J607: 101.325 kPa wins over 29.92 inHg, which reads 4.2e-5 lower', () => {
  const air = dryAir(toCelsius(60), 101_325);
  const withInches = toInside(29.92, 'inHg', 'absolutePressure') / air.dryPressure;
  expect(CORRECTIONS['sae-j607'].factor(air)).toBeCloseTo(1, 14);
  expect(withInches).toBeCloseTo(0.999958, 6);
});

test('t + 273 over 298 wins over 273.15 and 298.15: at most 5e-5 in the factor from 0 to 45 °C', () => {
  const differences = [0, 10, 20, 25, 30, 40, 45].map((celsius) => {
    const air = dryAir(celsius, 99_000);
    const thermodynamic = 1.18 * (99_000 / air.dryPressure) * Math.sqrt(air.temperature / 298.15) - 0.18;
    return Math.abs(thermodynamic - CORRECTIONS['sae-j1349'].factor(air));
  });
  expect(Math.max(...differences)).toBeLessThan(5e-5);
  expect(Math.max(...differences)).toBeGreaterThan(1e-5);
});

test.each([
  ['A', 25, 99_000, 0, 1],
  ['C', 35, 98_000, 0.6, 1.074868],
  ['D', 10, 102_000, 0.3, 0.940346],
  ['F', 30, 90_000, 0.5, 1.15992],
])(
  'J1349: 1.180 (1990) wins over 1.176 (2004, from memory), case %s: the difference is 0.004 (X - 1)',
  (_, celsius, pascal, humidity, form2004) => {
    const air = airAt(celsius, pascal, humidity);
    const factor = CORRECTIONS['sae-j1349'].factor(air);
    const share = (99_000 / air.dryPressure) * Math.sqrt((celsius + 273) / 298);
    expect(1.176 * share - 0.176).toBeCloseTo(form2004, 6);
    expect(factor - form2004).toBeCloseTo(0.004 * (share - 1), 6);
    expect(Math.abs(factor - form2004)).toBeLessThan(6e-4);
  },
);

function dryAir(celsius: number, pascal: number): AirState {
  return airAt(celsius, pascal, 0);
}

function airAt(celsius: number, pascal: number, ratio: number): AirState {
  const reading = airState({
    pressure: absolutePressure(pascal),
    temperature: temperature(celsius + ICE_POINT),
    humidity: { route: 'relativeHumidity', ratio },
    altitude: null,
  });
  if (!reading.ok) throw new Error(reading.remarks[0]?.message);
  return reading.value;
}

function toCelsius(fahrenheit: number): number {
  return toInside(fahrenheit, '°F', 'temperature') - ICE_POINT;
}
