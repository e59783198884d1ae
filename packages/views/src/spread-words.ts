import type { Spread, SpreadUsed } from '@pullbook/core/scatter';

const PRIOR: Record<Spread['from'], string> = {
  'built-in': 'usual in the trade (common practice, no source)',
  setting: 'the shop’s own setting',
  shop: 'from the shop’s pulls',
  stated: 'stated for this comparison',
};

/** What a spread rests on: `usual in the trade (common practice, no source)`, `these repeats, and what is from the shop’s pulls`. */
export function spreadSource({ from, fromRepeats, historySetAside }: SpreadUsed): string {
  if (historySetAside) return 'these repeats alone, what was known before set aside';
  return fromRepeats === null ? PRIOR[from] : `these repeats, and what is ${PRIOR[from]}`;
}
