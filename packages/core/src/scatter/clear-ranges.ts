import { runsOf } from '../numeric/runs.ts';
import type { GroupGain } from './model.ts';

/** Stretches of neighbouring nodes at which a band excludes zero, rising. NaN ends a stretch. */
export function clearRanges(
  speedsRpm: ArrayLike<number>,
  low: ArrayLike<number>,
  high: ArrayLike<number>,
): GroupGain['clearRanges'] {
  const nodes = Array.from({ length: speedsRpm.length }, (_, node) => node);
  const stretches = (holds: (node: number) => boolean, sign: 1 | -1) =>
    runsOf(nodes.map(holds)).map((run) => ({
      fromRpm: speedsRpm[run.fromRow]!,
      toRpm: speedsRpm[run.toRow]!,
      sign,
    }));
  return [...stretches((node) => low[node]! > 0, 1), ...stretches((node) => high[node]! < 0, -1)].sort(
    (one, other) => one.fromRpm - other.fromRpm,
  );
}
