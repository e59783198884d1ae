import { runsOf } from '../numeric/runs.ts';

export interface WindowNodes {
  firstNode: number;
  lastNode: number;
}

/** First and last node that every series reaches; holes between do not narrow it. `null`: they do not overlap. */
export function commonWindow(series: readonly Float64Array[]): WindowNodes | null {
  let firstNode = 0;
  let lastNode = Number.POSITIVE_INFINITY;
  for (const values of series) {
    const first = values.findIndex(Number.isFinite);
    if (first < 0) return null;
    firstNode = Math.max(firstNode, first);
    lastNode = Math.min(lastNode, values.findLastIndex(Number.isFinite));
  }
  return series.length > 0 && firstNode <= lastNode ? narrowed(series, { firstNode, lastNode }) : null;
}

/** The ends drawn in to nodes where all have a figure: an end inside another's hole is no end. */
function narrowed(series: readonly Float64Array[], { firstNode, lastNode }: WindowNodes): WindowNodes | null {
  const full = (node: number) => series.every((values) => Number.isFinite(values[node]!));
  let [first, last] = [firstNode, lastNode];
  while (first <= last && !full(first)) first += 1;
  while (last >= first && !full(last)) last -= 1;
  return first <= last ? { firstNode: first, lastNode: last } : null;
}

/** Stretches of nodes inside the window where a series has no figure, r/min. */
export function holesIn(
  values: Float64Array,
  nodesRpm: Float64Array,
  window: WindowNodes,
): [from: number, to: number][] {
  const inside = values.subarray(window.firstNode, window.lastNode + 1);
  return runsOf(Array.from(inside, Number.isNaN)).map((run) => [
    nodesRpm[window.firstNode + run.fromRow]!,
    nodesRpm[window.firstNode + run.toRow]!,
  ]);
}
