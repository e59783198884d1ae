import { expect, test } from 'vitest';
import { daysText, dayText, momentText } from './date.ts';

test('a day and a moment are told in the offset of the logger, not of this machine', () => {
  expect(dayText('2026-03-14')).toBe('14 March 2026');
  expect(momentText('2026-03-14T23:42:10-05:00')).toBe('14 March 2026 23:42');
  expect(momentText('2026-03-14')).toBe('14 March 2026');
});

test('what is no date is nothing', () => {
  expect(dayText(null)).toBe('');
  expect(dayText('yesterday')).toBe('');
  expect(dayText('2026-13-01')).toBe('');
});

test('days run together, without what both share', () => {
  expect(daysText(['2026-03-14T10:00:00+01:00', null, '2026-03-14T12:00:00+01:00'])).toBe('14 March 2026');
  expect(daysText(['2026-03-14', '2026-03-13'])).toBe('13 and 14 March 2026');
  expect(daysText(['2026-03-01', '2026-03-04', '2026-03-09'])).toBe('1 to 9 March 2026');
  expect(daysText(['2026-02-28', '2026-03-01'])).toBe('28 February and 1 March 2026');
  expect(daysText(['2025-12-31', '2026-01-01'])).toBe('31 December 2025 and 1 January 2026');
  expect(daysText([null])).toBe('');
});
