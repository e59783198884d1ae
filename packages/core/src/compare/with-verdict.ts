import { mean } from '../numeric/mean.ts';
import type { Remark } from '../remark/index.ts';
import {
  compareArrays,
  type ScatterComparison,
  type ScatterHistory,
  WORTHWHILE_GAIN,
} from '../scatter/index.ts';
import { bandOfGain, verdictOf } from './band-of-gain.ts';
import type { WindowNodes } from './common-window.ts';
import { gainOf } from './gain.ts';
import type { ComparedCombination, ComparedInput, CompareOptions, Gain } from './model.ts';
import { type PullArrays, pullArraysOf } from './pull-arrays.ts';
import { shiftOfGain } from './shift-of-gain.ts';
import { powerNotAboveZero, shifted, timedByOrder, verdictRemarks } from './verdict-remarks.ts';

/** A shift that is told: less would be written as 0.00 %. */
const TOLD_FROM = 5e-5;

/** What the scatter room says of the pulls at hand. */
export interface Judged {
  arrays: PullArrays;
  scatter: ScatterComparison;
}

/**
 * Hands the counted pulls to the scatter room. No judgement where no history is given, where the pulls share no speed, and, with
 * a remark, where a power that goes into the averages is not above zero: scatter is a share of power.
 */
export function judged(
  inputs: readonly ComparedInput[],
  combinations: readonly ComparedCombination[],
  {
    nodesRpm,
    windowRpm,
    averaged,
  }: { nodesRpm: Float64Array; windowRpm: readonly [number, number] | null; averaged: readonly number[] },
  options: CompareOptions & { baselineKey: string | null; history: ScatterHistory | null },
): { judgement: Judged | null; remarks: Remark[] } {
  const { history, baselineKey } = options;
  if (history === null || windowRpm === null) return { judgement: null, remarks: [] };
  const without = powerNotAboveZero(inputs, combinations, nodesRpm, averaged);
  if (without.length > 0) return { judgement: null, remarks: without };
  const arrays = pullArraysOf(inputs, combinations, nodesRpm, {
    baselineKey,
    keptOnTheBrake: options.keptOnTheBrake ?? [],
  });
  const compared = compareArrays(arrays.pulls, {
    history,
    // A survey has no baseline: no group is called so, and no gain is made.
    baseline: baselineKey ?? '',
    windowRpm,
    worthwhile: options.worthwhile ?? WORTHWHILE_GAIN,
    looks: options.looksAt == null ? null : { at: options.looksAt },
  });
  if (!compared.ok) return { judgement: null, remarks: [...compared.remarks] };
  const scatter = compared.value;
  const stated = baselineKey === null || scatter.gains.length === 0;
  return {
    judgement: { arrays, scatter },
    remarks: stated
      ? []
      : [
          ...verdictRemarks(scatter, baselineKey),
          ...(scatter.drift.handling === 'none' ? [] : timedByOrder(arrays.timedByOrder)),
          ...compared.remarks,
        ],
  };
}

export interface GainInputs {
  baseline: ComparedCombination;
  changed: ComparedCombination;
  nodesRpm: Float64Array;
  window: WindowNodes;
  averaged: readonly number[];
  boostComparable: boolean;
}

/** A gain with its band and verdict, as far as there is a judgement. */
export function judgedGain(
  on: GainInputs,
  judgement: Judged | null,
  worthwhile = WORTHWHILE_GAIN,
): { gain: Gain; remarks: Remark[] } | null {
  const ofGroup = judgement?.scatter.gains.find(({ group }) => group === on.changed.key);
  if (judgement === null || ofGroup === undefined) {
    const plain = gainOf({ ...on, factor: null });
    return plain === null ? null : { gain: plain, remarks: [] };
  }
  const { arrays, scatter } = judgement;
  const factor = shiftOfGain(ofGroup, arrays.pulls, on.baseline.key);
  const gain = gainOf({ ...on, factor });
  if (gain === null) return null;
  const shift = factor === null ? 1 : mean(on.averaged.map((node) => factor[node]!));
  const band = bandOfGain({ ...on, gain, ofGroup, scatter, shift });
  return {
    gain: { ...gain, band, verdict: verdictOf(band, ofGroup, on.baseline.key, worthwhile) },
    remarks: Math.abs(shift - 1) < TOLD_FROM ? [] : [shifted(on.changed.key, shift - 1, scatter)],
  };
}
