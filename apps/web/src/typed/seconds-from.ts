/** A time as people type it: `0.3`, `0,3 s`, `-0.05`. NaN where it is none. */
export function secondsFrom(text: string): number {
  const bare = text.trim().replace(/\s*s$/i, '').replace('−', '-');
  return /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(bare) ? Number(bare.replace(',', '.')) : Number.NaN;
}
