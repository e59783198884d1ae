import { readGain, readOdds } from '@pullbook/core/plan';
import { parseQuantity } from '@pullbook/core/quantity';
import { type Result, refused, remark } from '@pullbook/core/remark';

/**
 * A gain to be seen as a person writes it: a share of the baseline (`2 %`), or power (`8 hp`) where its power is known.
 *
 * @example gainFromText('2 %', null) // 0.02
 */
export function gainFromText(text: string, baselinePower: number | null): Result<number> {
  const ratio = parseQuantity(text, 'ratio', { decimalMark: 'either' });
  if (ratio.ok) return readGain(ratio.value);
  const power = parseQuantity(text, 'power', { decimalMark: 'either' });
  if (!power.ok) {
    return refused(
      remark(
        'refusal',
        'gain-to-see',
        `The gain "${text}" cannot be read. Give a share of the baseline's power such as 2 %, or a power such as 8 hp.`,
      ),
    );
  }
  if (baselinePower === null) {
    return refused(
      remark(
        'refusal',
        'gain-without-baseline',
        `A gain of ${text} is a share of the baseline's power, and no pull of the baseline is counted yet. Give it in per cent, such as 2 %.`,
      ),
    );
  }
  return readGain(power.value / baselinePower);
}

/** Odds as a person writes them: `0.8` or `80 %`. */
export function oddsFromText(text: string): Result<number> {
  const read = parseQuantity(text, 'ratio', { decimalMark: 'either' });
  return readOdds(read.ok ? read.value : Number.NaN);
}
