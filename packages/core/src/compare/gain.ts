import { mean } from '../numeric/mean.ts';
import type { ChannelMeaning } from '../pull/index.ts';
import { crossoversOf } from '../scatter/index.ts';
import type { WindowNodes } from './common-window.ts';
import type { ComparedCombination, Gain } from './model.ts';

export interface GainInput {
  baseline: ComparedCombination;
  changed: ComparedCombination;
  nodesRpm: Float64Array;
  window: WindowNodes;
  /** Nodes of the averages: those of the window where every combination has a figure. */
  averaged: readonly number[];
  /** Boost was measured at one place in both. */
  boostComparable: boolean;
  /** What the changed figures are to be taken times at each node, where drift or unequal set-ups shift them; `null`: as they are. */
  factor: Float64Array | null;
}

/** A combination less the baseline on the common window. All SI. `null` where the two share no node. */
export function gainOf(input: GainInput): Gain | null {
  const { baseline, changed, nodesRpm, averaged } = input;
  const power = difference(input, 'power');
  const torque = difference(input, 'torque');
  const known = nodesWith(power);
  if (known.length === 0 || averaged.length === 0) return null;
  const boost = input.boostComparable ? difference(input, 'boost') : null;
  const boosted = boost === null ? [] : averaged.filter((node) => Number.isFinite(boost[node]!));
  const top = boost === null ? -1 : boost.findLastIndex(Number.isFinite);
  const largest = known.reduce((best, node) => (power[node]! > power[best]! ? node : best));
  const smallest = known.reduce((best, node) => (power[node]! < power[best]! ? node : best));
  const meanPower = mean(averaged.map((node) => power[node]!));
  const before = mean(averaged.map((node) => baseline.channels.get('power')!.mean[node]!));
  return {
    baselineKey: baseline.key,
    changedKey: changed.key,
    power,
    torque,
    meanPower,
    meanPowerRatio: before > 0 ? meanPower / before : Number.NaN,
    meanTorque: mean(averaged.map((node) => torque[node]!)),
    meanBoost: boosted.length === 0 ? null : mean(boosted.map((node) => boost![node]!)),
    topBoost: top < 0 ? null : boost![top]!,
    largest: { power: power[largest]!, atRpm: nodesRpm[largest]! },
    smallest: { power: power[smallest]!, atRpm: nodesRpm[smallest]! },
    crossoversRpm: crossoversOf(nodesRpm, power),
    band: null,
    verdict: null,
  };
}

function difference(
  { baseline, changed, nodesRpm, window, factor }: GainInput,
  meaning: ChannelMeaning,
): Float64Array {
  const [before, after] = [baseline.channels.get(meaning), changed.channels.get(meaning)];
  const by = (node: number) => (factor === null || meaning === 'boost' ? 1 : factor[node]!);
  return nodesRpm.map((_, node) =>
    node < window.firstNode || node > window.lastNode
      ? Number.NaN
      : by(node) * (after?.mean[node] ?? Number.NaN) - (before?.mean[node] ?? Number.NaN),
  );
}

function nodesWith(values: Float64Array): number[] {
  return Array.from(values.keys()).filter((node) => Number.isFinite(values[node]!));
}
