/** An engine speed as people type it: `6500`, `6,500`, `6.500 rpm`. NaN where it is none. */
export function speedFrom(text: string): number {
  const bare = text.replace(/\s*rpm\s*$/i, '').trim();
  const withoutThousands = bare.replace(/^(\d{1,3})[\s.,\u2009](\d{3})$/, '$1$2');
  return /^\d+([.,]\d+)?$/.test(withoutThousands) ? Number(withoutThousands.replace(',', '.')) : Number.NaN;
}
