import type { Comparison } from '../compare/index.ts';
import type { Prediction } from '../shop/index.ts';
import type { TrialAnswer } from './model.ts';

/**
 * What was predicted, beside what came out: the mean gain over the averages' window, the highest power of the mean curve, or
 * the highest boost of it. `measured: null`: not pulled yet, or nothing to hold it against.
 */
export function predictionsOfTrial(
  predictions: readonly Prediction[],
  comparison: Pick<Comparison, 'combinations' | 'gains'> | null,
): TrialAnswer['predictions'] {
  return predictions.map((prediction) => {
    const measured = comparison === null ? null : measuredOf(prediction, comparison);
    const inside = measured === null ? null : measured >= prediction.low && measured <= prediction.high;
    return { prediction, measured, inside };
  });
}

function measuredOf(
  { key, what }: Prediction,
  { combinations, gains }: Pick<Comparison, 'combinations' | 'gains'>,
): number | null {
  if (what === 'meanGain') return gains.find(({ changedKey }) => changedKey === key)?.meanPowerRatio ?? null;
  const about = combinations.find((one) => one.key === key);
  if (what === 'peakPower') return about?.peakPower?.value ?? null;
  const boost = about?.channels.get('boost')?.mean.filter(Number.isFinite) ?? [];
  return boost.length === 0 ? null : Math.max(...boost);
}
