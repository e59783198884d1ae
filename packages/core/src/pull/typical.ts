import { median } from '../numeric/median.ts';
import { figureOf, rangeOf } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { MEANINGS } from './meanings.ts';
import type { ChannelMeaning } from './model.ts';

/** A note for each channel whose middling value over the accepted rows is outside what is usual: often a wrong unit. */
export function outsideTypical(
  values: ReadonlyMap<ChannelMeaning, Float64Array>,
  rows: readonly number[],
): Remark[] {
  return [...values].flatMap(([meaning, series]) => {
    const { typical, label, kind } = MEANINGS[meaning];
    if (typical === null || mostLieWithin(series, rows, typical)) return [];
    const middling = median(rows.map((row) => series[row]!));
    if (!Number.isFinite(middling)) return [];
    if (middling >= typical[0] && middling <= typical[1]) return [];
    return [
      remark(
        'caution',
        'outside-typical',
        said`${label} is ${figureOf(middling, kind)} in the middle of the pull; ${rangeOf(typical[0], typical[1], kind)} is usual (common practice, no source). Check the unit and the meaning of the column.`,
      ),
    ];
  });
}

/** Fewer than half lie below and fewer than half above: so does not the median, and no long channel need be sorted. */
function mostLieWithin(
  series: Float64Array,
  rows: readonly number[],
  [low, high]: readonly [number, number],
): boolean {
  let [finite, below, above] = [0, 0, 0];
  for (const row of rows) {
    const value = series[row]!;
    if (!Number.isFinite(value)) continue;
    finite += 1;
    if (value < low) below += 1;
    else if (value > high) above += 1;
  }
  return below < finite / 2 - 1 && above < finite / 2 - 1;
}
