import type { MergeState } from './state.ts';
import type { Thing } from './things.ts';

/**
 * Finds pulls that both books have under different ids, since both imported the same bytes: of one file and with the same
 * channels, sample by sample. Two of a file that are alike are paired in their order.
 */
export function pairSamePulls(
  { pullHere }: MergeState,
  ours: ReadonlyMap<string, Thing>,
  theirs: readonly Thing[],
): void {
  const theirIds = new Set(theirs.map(({ key }) => key));
  const free = new Map<string, string[]>();
  for (const { key, row } of ours.values()) {
    if (row.fileHash === null || theirIds.has(key)) continue;
    const curve = curveOf(row);
    free.set(curve, [...(free.get(curve) ?? []), key]);
  }
  for (const { key, row } of theirs) {
    if (row.fileHash === null || ours.has(key)) continue;
    const here = free.get(curveOf(row))?.shift();
    if (here !== undefined) pullHere.set(key, here);
  }
}

const curveOf = ({ fileHash, channelsHash }: Thing['row']): string => `${fileHash} ${channelsHash}`;
