import { expect, test } from 'vitest';
import { missingOf } from './missing-of.ts';

test('a question is asked once all of it is written', () => {
  expect(missingOf({})).toBe('Write the power it should make.');
  expect(missingOf({ power: '520 hp' })).toBe('');
  expect(missingOf({ power: '520 hp', what: 'power at a speed' })).toBe('Write the engine speed.');
  expect(missingOf({ power: '520 hp', what: 'power at a speed', at: '6000 rpm' })).toBe('');
  const average = { power: '400 hp', what: 'average power' as const };
  expect(missingOf({ ...average, window: '3000 rpm-' })).toBe('Write between which engine speeds.');
  expect(missingOf({ ...average, window: '3000 rpm-6500 rpm' })).toBe('');
});
