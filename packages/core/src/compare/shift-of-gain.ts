import type { GroupGain, PullArray } from '../scatter/index.ts';

/**
 * What the changed figures are taken times at each node, so that the plain difference of means becomes the gain as it is
 * estimated: without straight drift, with unequal set-ups by their weight. `null` where that is the plain difference already.
 *
 * @example A-B-A in a falling cell needs none: the plain means cancel a straight drift; A-A-B-A does
 */
export function shiftOfGain(
  gain: GroupGain,
  pulls: readonly PullArray[],
  baselineKey: string,
): Float64Array | null {
  const plain = (group: string) => 1 / pulls.filter((pull) => pull.group === group).length;
  const beyond = pulls.map(({ group }, place) => {
    const sign = group === gain.group ? 1 : group === baselineKey ? -1 : 0;
    return gain.weights[place]! - (sign === 0 ? 0 : sign * plain(group));
  });
  if (beyond.every((weight) => weight === 0)) return null;
  return Float64Array.from({ length: pulls[0]!.power.length }, (_, node) =>
    Math.exp(
      pulls.reduce(
        (sum, { power }, place) =>
          beyond[place] === 0 ? sum : sum + beyond[place]! * Math.log(power[node]!),
        0,
      ),
    ),
  );
}
