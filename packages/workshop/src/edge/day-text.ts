import { accepted, type Result, refused, remark } from '@pullbook/core/remark';

/**
 * A day of the calendar, ISO 8601, as a person writes it.
 *
 * @example dayFromText('2026-3-1', 'Day') // '2026-03-01'
 */
export function dayFromText(text: string | null | undefined, field: string): Result<string> {
  const given = text?.trim() ?? '';
  const [, year = '', month = '', day = ''] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(given) ?? [];
  const iso = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  // A day that is not there (30 February) comes back as another one.
  const instant = new Date(`${iso}T00:00:00Z`);
  if (Number.isNaN(instant.getTime()) || instant.toISOString().slice(0, 10) !== iso) {
    return refused(
      remark(
        'refusal',
        'day-not-read',
        `${field}: ${given === '' ? 'nothing was given' : `"${given}" is not a day`}. Accepted: year, month and day, such as 2026-03-14.`,
      ),
    );
  }
  return accepted(iso);
}

/** Today by this machine's own clock and place, ISO 8601. */
export function todayHere(now = new Date()): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
