import { expect, test } from 'vitest';
import { normalCdf } from './normal.ts';
import { normalSource } from './seeded-normals.ts';

const drawn = (seed: number, name: string, count: number, each = 3): Float64Array[] => {
  const source = normalSource(seed, name);
  return Array.from({ length: count }, (_, draw) => {
    const out = new Float64Array(each);
    source(draw, out);
    return out;
  });
};

test('the same seed, name and draw give the same numbers in any order', () => {
  const source = normalSource(11, 'map');
  const late = new Float64Array(5);
  source(900, late);
  expect([...late]).toEqual([...drawn(11, 'map', 901, 5)[900]!]);
});

test('another seed or name gives other numbers, without any likeness', () => {
  const base = drawn(11, 'map', 4000, 1).map((one) => one[0]!);
  for (const other of [
    drawn(12, 'map', 4000, 1),
    drawn(11, 'cooler', 4000, 1),
    drawn(11 + 2 ** 32, 'map', 4000, 1),
  ]) {
    const product = other.reduce((sum, one, draw) => sum + one[0]! * base[draw]!, 0) / base.length;
    // One standard deviation of a correlation of independent numbers is 1/sqrt(4000) = 0.016.
    expect(Math.abs(product)).toBeLessThan(0.06);
  }
});

test('numbers are standard normal: largest distance of the shares by Kolmogorov and Smirnov', () => {
  const values = drawn(3, 'any', 8000)
    .flatMap((one) => [...one])
    .sort((a, b) => a - b);
  const count = values.length;
  const distance = values.reduce(
    (most, value, place) =>
      Math.max(
        most,
        Math.abs(normalCdf(value) - place / count),
        Math.abs(normalCdf(value) - (place + 1) / count),
      ),
    0,
  );
  // 1.95 / sqrt(n): passed by chance once in 1,000 sets (asymptotic, from memory); the seed is fixed.
  expect(distance).toBeLessThan(1.95 / Math.sqrt(count));
});
