import { readFileSync } from 'node:fs';
import { PALETTE } from '@pullbook/charts';
import { describe, expect, test } from 'vitest';
import { ciede2000, lab, linear, SEEN_WITH, seenWith, type Triple } from './colour.ts';

const PAIRS = readFileSync(new URL('ciede2000.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((row) => row.split(',').map(Number) as [number, number, number, number, number, number, number]);

/**
 * Sharma, Wu, Dalal 2005, table 1: 34 pairs made to catch wrong implementations (typed from memory; the rows that were looked up in
 * public copies agree). Half of the fourth decimal printed.
 */
test('the measure of colour difference gives the published differences', () => {
  expect(PAIRS).toHaveLength(34);
  for (const [l1, a1, b1, l2, a2, b2, difference] of PAIRS) {
    expect(Math.abs(ciede2000([l1, a1, b1], [l2, a2, b2]) - difference)).toBeLessThanOrEqual(5e-5 + 1e-9);
    expect(ciede2000([l2, a2, b2], [l1, a1, b1])).toBeCloseTo(difference, 4);
  }
});

test('the simulation leaves greys as they are', () => {
  for (const kind of Object.keys(SEEN_WITH) as (keyof typeof SEEN_WITH)[]) {
    for (const value of seenWith(kind, [0.4, 0.4, 0.4])) expect(value).toBeCloseTo(0.4, 5);
  }
});

const VISIONS: [string, (colour: Triple) => Triple][] = [
  ['full colour vision', (colour) => colour],
  ...(Object.keys(SEEN_WITH) as (keyof typeof SEEN_WITH)[]).map(
    (kind): [string, (colour: Triple) => Triple] => [kind, (colour) => seenWith(kind, colour)],
  ),
];

/**
 * A difference of 1 is about what can just be seen side by side, one of 5 is seen at a glance (common practice, no source). Colour is
 * never alone: dash and end mark differ too, which `palette.test.ts` asks for.
 */
describe.each(['light', 'dark'] as const)('the palette, %s', (theme) => {
  test.each(VISIONS)('with %s', (_, seen) => {
    const colours = PALETTE.map((combination) => lab(seen(linear(combination[theme]))));
    colours.forEach((one, index) => {
      for (const [after, other] of colours.slice(index + 1).entries()) {
        const difference = ciede2000(one, other);
        expect(difference, `${index} and ${index + 1 + after}`).toBeGreaterThan(6);
        // Those that stand next to each other in a picture's list.
        if (after === 0) expect(difference, `${index} and its neighbour`).toBeGreaterThan(9);
      }
    });
    // Baseline and change, which nearly every picture has.
    expect(ciede2000(colours[0]!, colours[1]!)).toBeGreaterThan(40);
  });
});
