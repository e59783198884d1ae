import { describe, expect, test } from 'vitest';
import { formatNumber, formatQuantity } from './format.ts';
import { unitFor } from './unit-table.ts';

describe('numbers', () => {
  test('groups and sign', () => {
    expect(formatNumber(1234.56, 1, '.', { sign: true, thousands: true })).toBe('+1,234.6');
    expect(formatNumber(-1234567.8, 1, ',', { thousands: true })).toBe('−1\u202f234\u202f567,8');
    expect(formatNumber(6500, 0, '.')).toBe('6500');
  });

  test('what rounds to zero has no sign', () => {
    expect(formatNumber(-0.004, 2, '.', { sign: true })).toBe('0.00');
    expect(formatNumber(0, 0, '.', { sign: true })).toBe('0');
  });

  test('what is not known is a dash', () => {
    expect(formatNumber(Number.NaN, 1, '.')).toBe('–');
    expect(formatNumber(Number.POSITIVE_INFINITY, 1, '.')).toBe('–');
  });
});

describe('quantities', () => {
  const us = { system: 'us', decimalMark: '.' } as const;
  const si = { system: 'si', decimalMark: ',' } as const;

  test('in both systems', () => {
    expect(formatQuantity(400_000, 'power', us)).toEqual({
      number: '536.4',
      unit: 'hp',
      text: '536.4\u00a0hp',
    });
    expect(formatQuantity(400_000, 'power', si).text).toBe('400,0\u00a0kW');
    expect(formatQuantity(303.15, 'temperature', us).text).toBe('86\u00a0°F');
    expect(formatQuantity(10, 'temperatureDifference', us).text).toBe('18\u00a0°F');
    expect(formatQuantity(6500, 'engineSpeed', us).text).toBe('6,500\u00a0rpm');
  });

  test('in a unit asked for', () => {
    const percent = unitFor('%', 'ratio')!;
    expect(formatQuantity(0.0312, 'ratio', { ...us, unit: percent, decimals: 1, sign: true }).text).toBe(
      '+3.1\u00a0%',
    );
  });
});
