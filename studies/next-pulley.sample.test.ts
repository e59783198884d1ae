import { describe, expect, test } from 'vitest';
import { GATE, judged } from './next-pulley/judge.ts';
import { runEngine } from './next-pulley/run.ts';

// The study in small, by its own seed: so few engines only tell that nothing is broken. `npm run study:match` is the study.
const ENGINES = 16;
const runs = Array.from({ length: ENGINES }, (_, number) => runEngine(1, number));

/** Engines count once, for their speeds go together; a share may miss its gate by four standard errors of so many. */
const allowance = (gate: number) => 4 * Math.sqrt((gate * (1 - gate)) / ENGINES);

describe('the next pulley, in small', () => {
  test.each(['boost', 'brakePower'] as const)('%s', (figure) => {
    const after = judged(runs, 'fitted', figure);
    expect(after.engines).toBe(ENGINES);
    expect(after.held).toBeGreaterThanOrEqual(GATE.low - allowance(GATE.low));
    // A pull is worth something, and the middle of the band with it.
    const before = judged(runs, 'unfitted', figure);
    expect(after.width).toBeLessThan(0.6 * before.width);
    expect(after.off).toBeLessThan(0.6 * before.off);
  });

  test('it can fail: bands of a tenth of the width hold too seldom', () => {
    const narrow = runs.map((run) => {
      const { off, width } = run.fitted.boost;
      return Math.abs(off) < 0.05 * width;
    });
    expect(narrow.filter(Boolean).length / ENGINES).toBeLessThan(GATE.low - allowance(GATE.low));
  });

  test('a run comes again from its seed', () => expect(runEngine(1, 0)).toEqual(runs[0]));
});
