import { expect, test } from 'vitest';
import { priorChange } from './prior-change.ts';

test('what was typed goes by its path, blank is left out', () => {
  expect(priorChange({ setUp: ' 0.4 % ', 'pull.injected': '0.3 %', day: '' }, [], null)).toEqual({
    setUp: '0.4 %',
    pull: { injected: '0.3 %' },
  });
});

test('a figure that was not touched goes as it is kept, not as it is shown', () => {
  const kept = { pull: { injected: 0.00312 }, setUp: 0.004, degreesOfFreedom: { pull: 9 } };
  const shown = [
    { path: 'pull.injected', own: '0.31 %' },
    { path: 'setUp', own: '0.40 %' },
  ];
  expect(priorChange({ 'pull.injected': '0.31 %', setUp: '0.5 %' }, shown, kept)).toEqual({
    pull: { injected: 0.00312 },
    setUp: '0.5 %',
    degreesOfFreedom: { pull: 9 },
  });
});
