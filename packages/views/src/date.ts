const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** `14 March 2026` from an ISO 8601 text, in its own offset: the day as the logger's clock had it. '' when it is not one. */
export function dayText(iso: string | null): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso ?? '');
  const month = match ? MONTHS[Number(match[2]) - 1] : undefined;
  return match && month ? `${Number(match[3])} ${month} ${match[1]}` : '';
}

/** `14 March 2026 10:42`; the day alone when there is no time of day. */
export function momentText(iso: string | null): string {
  const time = /T(\d{2}:\d{2})/.exec(iso ?? '');
  return [dayText(iso), time?.[1] ?? ''].filter(Boolean).join(' ');
}

/** The days of several moments: `13 and 14 March 2026`, `2 January to 14 March 2026`; '' when none is known. */
export function daysText(moments: readonly (string | null)[]): string {
  const days = [...new Set(moments.map((moment) => moment?.slice(0, 10) ?? ''))]
    .filter((day) => dayText(day) !== '')
    .sort();
  const first = days[0];
  const last = days.at(-1);
  if (first === undefined || last === undefined) return '';
  if (first === last) return dayText(first);
  const joint = days.length === 2 ? 'and' : 'to';
  return `${withoutWhatIsShared(first, last)} ${joint} ${dayText(last)}`;
}

/** The earlier day without the month and year that the later one says too. */
function withoutWhatIsShared(earlier: string, later: string): string {
  const parts = dayText(earlier).split(' ');
  if (earlier.slice(0, 7) === later.slice(0, 7)) return parts[0]!;
  return earlier.slice(0, 4) === later.slice(0, 4) ? parts.slice(0, 2).join(' ') : parts.join(' ');
}
