import { BUILT_IN_PRIOR, historyFrom } from '@pullbook/core/shop';
import { expect, test } from 'vitest';
import { withStated } from './stated-scatter.ts';

const known = historyFrom(BUILT_IN_PRIOR, 'injected');

test('scatter between pulls said by hand replaces all that is known, but along the engine speed', () => {
  const stated = withStated(known, { pull: 0.005 });
  expect(stated.pull).toEqual({ sigma: 0.005, degreesOfFreedom: 20, from: 'stated' });
  for (const part of ['setUp', 'day', 'cell', 'driftPerHour'] as const) expect(stated[part].sigma).toBe(0);
  expect(stated.within).toEqual(known.within);
});

test('what else is said stands beside it, as well known as it says', () => {
  const said = { pull: 0.005, setUp: 0.004, driftPerHour: 0.001, degreesOfFreedom: 200 };
  const stated = withStated(known, said);
  expect(stated.setUp).toEqual({ sigma: 0.004, degreesOfFreedom: 200, from: 'stated' });
  expect(stated.driftPerHour).toEqual({ sigma: 0.001, degreesOfFreedom: 200, from: 'stated' });
  expect(stated.day.sigma).toBe(0);
});

test('set-up scatter said alone leaves the rest as known', () => {
  const stated = withStated(known, { setUp: 0 });
  expect(stated.setUp).toEqual({ sigma: 0, degreesOfFreedom: 20, from: 'stated' });
  expect({ ...stated, setUp: known.setUp }).toEqual(known);
});
