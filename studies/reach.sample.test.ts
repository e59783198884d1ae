import { describe, expect, test } from 'vitest';
import { judged } from './reach/judge.ts';
import { runWorld } from './reach/run.ts';

// The study in small, by its own seed: so few engines only tell that nothing is broken. `npm run study:reach` is the study.
const WORLDS = 5;
const all = Array.from({ length: WORLDS }, (_, number) => runWorld(1, number)).flat();

describe('rungs of the ladder, in small', () => {
  test.each([true, false])('fitted %s: most bands hold, and what is said is near', (isFitted) => {
    const { rungs, held, off } = judged(all.filter((one) => one.isFitted === isFitted));
    expect(rungs).toBeGreaterThan(4 * WORLDS);
    // An engine's rungs hold or miss together: of five engines' bands of 95 of 100 one may miss.
    expect(held).toBeGreaterThanOrEqual(0.7);
    expect(off).toBeLessThan(isFitted ? 0.05 : 0.25);
  });

  test('a pull is worth something: bands after it are less than half as wide', () => {
    const width = (isFitted: boolean) => judged(all.filter((one) => one.isFitted === isFitted)).width;
    expect(width(true)).toBeLessThan(0.5 * width(false));
  });

  test('it can fail: bands of a tenth of the width hold too seldom', () => {
    const fitted = all.filter(({ isFitted }) => isFitted);
    const narrow = fitted.filter(({ off, width }) => Math.abs(off) < 0.05 * width);
    expect(narrow.length / fitted.length).toBeLessThan(0.7);
  });
});
