import { expect, test } from 'vitest';
import { dayHere, momentHere } from './moment-here.ts';

test('an instant is written by the clock of this machine, as dates are elsewhere', () => {
  // Built by the machine's own clock, so that it is the same moment wherever the test runs.
  const here = new Date(2026, 2, 4, 9, 5);
  expect(momentHere(here.toISOString())).toBe('4 March 2026 09:05');
  expect(dayHere(here.toISOString())).toBe('4 March 2026');
});
