import type { ComparedCombination, Comparison } from '../compare/index.ts';
import { mean, sampleDeviation } from '../numeric/mean.ts';
import type { ChannelMeaning } from '../pull/index.ts';
import { type Said, said } from '../remark/index.ts';
import type { About, Observation, State } from './observation.ts';
import type { Threshold } from './thresholds.ts';

/** Fewer degrees of freedom say too little of a channel's scatter to widen its threshold by. */
const LEAST_FREEDOM = 2;

export interface ChannelChange {
  before: number;
  after: number;
  /** Two standard errors of the difference by the repeats; 0: too few of them. */
  noise: number;
}

/** Means of a channel over the averages' window on both sides; `null`: a pull has none. */
export function channelChange(
  comparison: Comparison,
  baseline: ComparedCombination,
  changed: ComparedCombination,
  meaning: ChannelMeaning,
  only: (rpm: number) => boolean = () => true,
): ChannelChange | null {
  const [before, after] = [baseline, changed].map((one) => averagesOf(comparison, one, meaning, only));
  if (!before?.length || !after?.length) return null;
  const [meanBefore, meanAfter] = [mean(before), mean(after)];
  if (!Number.isFinite(meanBefore) || !Number.isFinite(meanAfter)) return null;
  return { before: meanBefore, after: meanAfter, noise: noiseOf(before, after) };
}

/** Average of each pull over the averages' window. */
export function averagesOf(
  comparison: Comparison,
  { channels }: ComparedCombination,
  meaning: ChannelMeaning,
  only: (rpm: number) => boolean = () => true,
): number[] {
  const [low, high] = comparison.averagesWindowRpm ?? [Number.NaN, Number.NaN];
  return (channels.get(meaning)?.pulls ?? []).map(({ values }) =>
    mean(
      values.filter((value, node) => {
        const rpm = comparison.engineSpeedRpm[node]!;
        return rpm >= low && rpm <= high && only(rpm) && Number.isFinite(value);
      }),
    ),
  );
}

function noiseOf(before: readonly number[], after: readonly number[]): number {
  const freedom = before.length + after.length - 2;
  if (freedom < LEAST_FREEDOM) return 0;
  const squares = [before, after].map((one) => (one.length - 1) * (sampleDeviation(one) ?? 0) ** 2);
  const variance = (squares[0]! + squares[1]!) / freedom;
  return 2 * Math.sqrt(variance * (1 / before.length + 1 / after.length));
}

/** `up` or `down` beyond the larger of the two limits. */
export function stateOf(change: number, ...limits: readonly number[]): State {
  if (Math.abs(change) <= Math.max(...limits)) return 'same';
  return change > 0 ? 'up' : 'down';
}

/** An observation of a channel's mean, with words for more and less. */
export function observed(
  about: About,
  label: string,
  { before, after, noise }: ChannelChange,
  threshold: Threshold,
  [more, less]: readonly [more: string, less: string],
  where: string | Said = 'on average',
): Observation {
  const scale = threshold.isShare ? before : 1;
  const change = (after - before) / scale;
  const limit = Math.max(threshold.least, noise / Math.abs(scale));
  const state = stateOf(change, limit);
  const text =
    state === 'same'
      ? said`${label} the same within ${threshold.figure(limit)}.`
      : said`${label} ${threshold.figure(Math.abs(change))} ${state === 'up' ? more : less} ${where}.`;
  return { about, state, change, text };
}
