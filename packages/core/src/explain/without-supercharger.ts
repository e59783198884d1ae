import { type CombinationSheet, isSupercharged, whatChanged } from '../combination/index.ts';
import type { Comparison, Gain } from '../compare/index.ts';
import { mean } from '../numeric/mean.ts';
import { figureOf } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Observation } from './observation.ts';
import { averagesOf, stateOf } from './observe-channel.ts';
import { SCALING_WITHIN } from './thresholds.ts';

/**
 * The boosted gain against what the same change gained without a supercharger, times the pressure ratio. Only where the
 * trial has both pairs, and the same lines of the sheets changed in both.
 */
export function observedWithoutSupercharger(
  comparison: Comparison,
  gain: Gain,
  sheets: ReadonlyMap<string, CombinationSheet>,
  pressureRatio: number | null,
): Observation[] {
  const [baseline, changed] = [sheets.get(gain.baselineKey), sheets.get(gain.changedKey)];
  if (baseline === undefined || changed === undefined || pressureRatio === null) return [];
  if (!isSupercharged(baseline) || !isSupercharged(changed)) return [];
  const pair = pairWithout(sheets, linesOf(baseline, changed));
  if (pair === null) return [];
  const [before, after] = pair.map((key) => {
    const combination = comparison.combinations.find((one) => one.key === key);
    return combination === undefined ? Number.NaN : mean(averagesOf(comparison, combination, 'power'));
  });
  const bare = after! - before!;
  if (!Number.isFinite(bare) || bare === 0) return [];
  const foreseen = bare * pressureRatio;
  const state = stateOf(gain.meanPower - foreseen, SCALING_WITHIN * Math.abs(foreseen));
  const figure = (watt: number) => figureOf(watt, 'power', { decimals: 0 });
  return [
    {
      about: 'withoutSupercharger',
      state,
      change: gain.meanPower / foreseen - 1,
      text: said`The same change gained ${figure(bare)} without the supercharger (${pair[0]} to ${pair[1]}), ${figure(foreseen)} times the pressure ratio: ${state === 'same' ? 'about what it gains here' : state === 'up' ? 'more is gained here' : 'less is gained here'}.`,
    },
  ];
}

/** Two combinations without a supercharger that differ in the same lines, or `null`. */
function pairWithout(
  sheets: ReadonlyMap<string, CombinationSheet>,
  lines: string,
): [before: string, after: string] | null {
  const bare = [...sheets].filter(([, sheet]) => !isSupercharged(sheet));
  for (const [before, left] of bare)
    for (const [after, right] of bare)
      if (before !== after && linesOf(left, right) === lines) return [before, after];
  return null;
}

/** The lines in which two sheets differ, with both texts: the same change has the same ones. */
const linesOf = (before: CombinationSheet, after: CombinationSheet): string =>
  whatChanged(before, after, [])
    .map((line) => `${line.section}.${line.field}: ${line.before} > ${line.after}`)
    .sort()
    .join('\n');
