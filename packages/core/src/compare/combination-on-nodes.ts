import { mean, sampleDeviation } from '../numeric/mean.ts';
import { type ChannelMeaning, fitPeak, type Peak, type PullView } from '../pull/index.ts';
import type { ComparedChannel, ComparedCombination, ComparedInput } from './model.ts';
import { atNodes } from './nodes.ts';

/** A combination's pulls and their mean on the nodes. Averages and repeat spread come once the common window is known. */
export function combinationOnNodes(input: ComparedInput, nodesRpm: Float64Array): ComparedCombination {
  const curves = input.pulls.flatMap(({ view }) =>
    hasPower(view) ? [{ pullId: view.pullId, curve: view.curve! }] : [],
  );
  const meanings = new Set(curves.flatMap(({ curve }) => [...curve.channels.keys()]));
  const channels = new Map<ChannelMeaning, ComparedChannel>();
  for (const meaning of meanings) {
    const pulls = curves.map(({ pullId, curve }) => ({ pullId, values: atNodes(curve, meaning, nodesRpm) }));
    channels.set(meaning, {
      mean: meanOfAll(
        pulls.map((pull) => pull.values),
        nodesRpm.length,
      ),
      pulls,
    });
  }
  return {
    key: input.key,
    combinationId: input.combinationId,
    pullIds: input.pulls.map(({ pull }) => pull.id),
    channels,
    peakPower: peakOf(input, channels, nodesRpm, 'power'),
    peakTorque: peakOf(input, channels, nodesRpm, 'torque'),
    averages: new Map(),
    repeatSpread: null,
    peakPowerBand: null,
  };
}

/** Means over the given nodes, and how far the pulls' average power scatters as a share of it. */
export function withAverages(
  combination: ComparedCombination,
  nodes: readonly number[],
): ComparedCombination {
  const averages = new Map<ChannelMeaning, number>();
  for (const [meaning, channel] of combination.channels) {
    const average = mean(nodes.map((node) => channel.mean[node]!));
    if (Number.isFinite(average)) averages.set(meaning, average);
  }
  const powers = (combination.channels.get('power')?.pulls ?? [])
    .map((pull) => mean(nodes.map((node) => pull.values[node]!)))
    .filter(Number.isFinite);
  const deviation = sampleDeviation(powers);
  return { ...combination, averages, repeatSpread: deviation === null ? null : deviation / mean(powers) };
}

/** Whether a view has a power curve to compare. */
export const hasPower = (view: PullView): boolean =>
  view.curve?.channels.get('power')?.some(Number.isFinite) ?? false;

/** Mean at each node where every pull has a figure: a mean over fewer pulls at one end would step there. */
function meanOfAll(pulls: readonly Float64Array[], nodes: number): Float64Array {
  return Float64Array.from(
    { length: nodes },
    (_, node) => pulls.reduce((sum, values) => sum + values[node]!, 0) / pulls.length,
  );
}

/**
 * Peak of the mean curve. A single pull of settled points keeps the peak of its own rows, and a combination known only by
 * printed or remembered figures the mean of those.
 */
function peakOf(
  input: ComparedInput,
  channels: ReadonlyMap<ChannelMeaning, ComparedChannel>,
  nodesRpm: Float64Array,
  meaning: 'power' | 'torque',
): Peak | null {
  const own = input.pulls.map(({ view }) => (meaning === 'power' ? view.peakPower : view.peakTorque));
  const curve = channels.get(meaning);
  const kinds = input.pulls.flatMap(({ view }) => (hasPower(view) ? [view.curve!.kindOfRows] : []));
  if (curve === undefined) return meanOfSummaries(own.filter((peak) => peak !== null));
  if (input.pulls.length === 1 && kinds[0] === 'points') return own[0]!;
  return fitPeak(nodesRpm, curve.mean, { kindOfRows: kinds.includes('samples') ? 'samples' : 'points' });
}

function meanOfSummaries(peaks: readonly Peak[]): Peak | null {
  if (peaks.length === 0) return null;
  return {
    value: mean(peaks.map((peak) => peak.value)),
    atRpm: mean(peaks.map((peak) => peak.atRpm)),
    valueSpread: sampleDeviation(peaks.map((peak) => peak.value)),
    atRpmSpread: sampleDeviation(peaks.map((peak) => peak.atRpm).filter(Number.isFinite)),
    stillClimbing: false,
  };
}
