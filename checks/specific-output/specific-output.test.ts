import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { powerByDisplacement } from '@pullbook/core/reach';
import { describe, expect, test } from 'vitest';

const CUBIC_INCH = 16.387064e-6; // m³, exact
const HORSEPOWER = 745.69987; // W, from NIST SP 811 to eight digits

const rowsOf = (name: string): string[][] =>
  readFileSync(join(import.meta.dirname, name), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));

interface Engine {
  displacement: number;
  power: number;
  charged: boolean;
}

/** On gasoline, with a power; without an electric motor beside it. */
const of1985 = rowsOf('cars-1985.csv').flatMap(([, size, power, aspiration, fuel]): Engine[] =>
  fuel !== 'gas' || size === '' || power === ''
    ? []
    : [
        {
          displacement: Number(size) * CUBIC_INCH,
          power: Number(power) * HORSEPOWER,
          charged: aspiration === 'turbo',
        },
      ],
);
const of2022 = rowsOf('fleet-2022.csv').flatMap(
  ([, power, , litres, fuel, electrified, charged]): Engine[] =>
    fuel !== 'gasoline' || electrified === 'yes'
      ? []
      : [
          {
            displacement: Number(litres) / 1000,
            power: Number(power) * HORSEPOWER,
            charged: charged === 'yes',
          },
        ],
);

/** kW/L, rising. */
const specific = (engines: readonly Engine[]): number[] =>
  engines.map(({ power, displacement }) => power / displacement / 1e6).sort((a, b) => a - b);
const alone = (engines: readonly Engine[]) => specific(engines.filter(({ charged }) => !charged));
const charged = (engines: readonly Engine[]) => specific(engines.filter((one) => one.charged));
const at = (sorted: readonly number[], share: number): number => sorted[Math.floor(share * sorted.length)]!;

/** Band of a guess about the median: 1.96 robust standard deviations of the logarithm, by the median of absolute deviations. */
function bandOf(values: readonly number[]): { low: number; middle: number; high: number } {
  const middle = at(values, 0.5);
  const off = values.map((value) => Math.abs(Math.log(value / middle))).sort((a, b) => a - b);
  const deviation = 1.4826 * at(off, 0.5);
  return { low: middle * Math.exp(-1.96 * deviation), middle, high: middle * Math.exp(1.96 * deviation) };
}

/** Share of engines within the band of all the others. */
function heldLeavingOneOut(values: readonly number[]): number {
  const held = values.filter((value, place) => {
    const { low, high } = bandOf(values.filter((_, other) => other !== place));
    return value >= low && value <= high;
  });
  return held.length / values.length;
}

const share = (values: readonly number[], low: number, high: number) =>
  values.filter((value) => value >= low && value <= high).length / values.length;

describe('specific output of 205 cars of 1985 and 1,621 vehicles of 2022', () => {
  const fleets = [
    { name: '1985, no charger', values: alone(of1985), count: 159 },
    { name: '1985, turbocharged', values: charged(of1985), count: 24 },
    { name: '2022, no charger', values: alone(of2022), count: 672 },
    { name: '2022, turbocharged', values: charged(of2022), count: 577 },
  ];

  test('printed: the honest error of a guess by displacement alone, each engine left out in turn', () => {
    console.info(
      fleets
        .map(({ name, values }) => {
          const { low, middle, high } = bandOf(values);
          const figures = [low, middle, high].map((value) => value.toFixed(1)).join(' … ');
          return `${name}: ${values.length} engines, ${figures} kW/L, holds ${(100 * heldLeavingOneOut(values)).toFixed(0)} of 100`;
        })
        .join('\n'),
    );
    for (const { name, values, count } of fleets) expect(values.length, name).toBe(count);
    // Within one fleet and induction such a guess is off by a quarter to a half, and tails are longer than a normal's.
    for (const { name, values } of fleets) {
      const { middle, high } = bandOf(values);
      expect(high / middle - 1, name).toBeGreaterThan(0.2);
      expect(heldLeavingOneOut(values), name).toBeGreaterThan(0.8);
    }
  });

  test('a charger is worth as much as what an engine without one is unknown by: induction has to be told', () => {
    expect(at(charged(of1985), 0.5) / at(alone(of1985), 0.5)).toBeGreaterThan(1.25);
    expect(at(charged(of2022), 0.5) / at(alone(of2022), 0.5)).toBeGreaterThan(1.5);
  });

  test('the band of one fleet does not hold the other: a guess needs both', () => {
    const older = bandOf(alone(of1985));
    expect(share(alone(of2022), older.low, older.high)).toBeLessThan(0.5);
  });
});

describe('what is said of an engine of which nothing was pulled', () => {
  const { low, high } = powerByDisplacement(1e-3);

  test('its ends are the low one of 1985 and the high one of 2022, within 2 %', () => {
    // A rounded figure beside a percentile of some hundred engines.
    expect(Math.abs(low / 1e3 / at(alone(of1985), 0.025) - 1)).toBeLessThan(0.02);
    expect(Math.abs(high / 1e3 / at(alone(of2022), 0.975) - 1)).toBeLessThan(0.02);
  });

  test('it holds 95 of 100 of each fleet, and no narrower range would hold both', () => {
    for (const fleet of [of1985, of2022]) {
      expect(share(alone(fleet), low / 1e3, high / 1e3)).toBeGreaterThan(0.95);
      expect(share(alone(fleet), 1.15 * (low / 1e3), high / 1e3 / 1.35)).toBeLessThan(0.95);
    }
  });
});
