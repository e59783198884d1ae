import { median } from '../numeric/median.ts';
import { formatQuantity } from '../quantity/index.ts';
import { type Remark, remark } from '../remark/index.ts';
import { MEANINGS } from './meanings.ts';
import type { ChannelMeaning } from './model.ts';

/** A note for each channel whose middling value over the accepted rows is outside what is usual: often a wrong unit. */
export function outsideTypical(
  values: ReadonlyMap<ChannelMeaning, Float64Array>,
  rows: readonly number[],
): Remark[] {
  return [...values].flatMap(([meaning, series]) => {
    const { typical, label, kind } = MEANINGS[meaning];
    const middling = median(rows.map((row) => series[row]!));
    if (typical === null || !Number.isFinite(middling)) return [];
    if (middling >= typical[0] && middling <= typical[1]) return [];
    const text = (value: number) => formatQuantity(value, kind, { system: 'si', decimalMark: '.' }).text;
    return [
      remark(
        'caution',
        'outside-typical',
        `${label} is ${text(middling)} in the middle of the pull; ${text(typical[0])} to ${text(typical[1])} is usual ` +
          '(common practice, no source). Check the unit and the meaning of the column.',
      ),
    ];
  });
}
