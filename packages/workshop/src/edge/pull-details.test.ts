import { describe, expect, test } from 'vitest';
import { pullDetailsFromText } from './pull-details.ts';

const NOW = '2026-03-14T10:00:00Z';

describe('pullDetailsFromText', () => {
  test('says nothing of what was not said', () => {
    expect(pullDetailsFromText({}, NOW)).toEqual({ ok: true, value: {}, remarks: [] });
    const nulls = pullDetailsFromText({ cell: null, weather: null, name: ' ' }, NOW);
    expect(nulls.ok && nulls.value).toEqual({ cell: null, weather: null });
  });

  test('a note carries its moment', () => {
    const result = pullDetailsFromText({ notes: ' belt dusty ' }, NOW);
    expect(result.ok && result.value.notes).toEqual([{ at: NOW, text: 'belt dusty' }]);
  });

  test.each([
    ['observed', undefined, { standard: 'observed', factor: 1 }],
    ['unknown', undefined, { standard: 'unknown', factor: null }],
    ['sae-j1349', 1.021, { standard: 'sae-j1349', factor: 1.021 }],
    ['sae-j1349', undefined, { standard: 'sae-j1349', factor: null }],
  ])('corrected by %s, factor %s', (standard, factor, expected) => {
    const result = pullDetailsFromText({ carried: { standard, factor } }, NOW);
    expect(result.ok && result.value.carried).toEqual(expected);
  });

  test.each([
    [{ carried: { standard: 'sae' } }, 'unknown-correction'],
    [{ carried: { standard: 'sae-j1349', factor: 1021 } }, 'absurd-factor'],
    [{ recordedAt: '14.3.2026' }, 'time-not-read'],
    [{ recordedAt: '2026-13-40' }, 'time-not-read'],
  ])('%j is refused: %s', (text, code) => {
    const result = pullDetailsFromText(text, NOW);
    expect(result.ok).toBe(false);
    expect(result.remarks[0]).toMatchObject({ level: 'refusal', code });
  });
});
