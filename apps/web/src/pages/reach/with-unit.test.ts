import { describe, expect, test } from 'vitest';
import { endsOf, withUnit } from './with-unit.ts';

describe('a question as typed', () => {
  test('a bare number is in the units of the shop', () => {
    expect(withUnit({ power: '520', boostCap: '10' }, 'us')).toEqual({ power: '520 hp', boostCap: '10 psi' });
    expect(withUnit({ power: ' 390,5 ' }, 'si')).toEqual({ power: '390,5 kW' });
    expect(withUnit({ at: '6,000', window: '3000-6500' }, 'us')).toEqual({
      at: '6,000 rpm',
      window: '3000 rpm-6500 rpm',
    });
  });

  test('what has its unit, or is no number, stays as it was typed', () => {
    expect(withUnit({ power: '390 kW', what: 'average power' }, 'us')).toEqual({
      power: '390 kW',
      what: 'average power',
    });
    expect(withUnit({ power: 'a lot' }, 'us')).toEqual({ power: 'a lot' });
  });

  test('the ends of a window, also of one that is not typed to its end', () => {
    expect(endsOf('3000 rpm – 6500 rpm')).toEqual(['3000 rpm', '6500 rpm']);
    expect(endsOf('3000')).toEqual(['3000', '']);
    expect(endsOf(undefined)).toEqual(['', '']);
  });
});
