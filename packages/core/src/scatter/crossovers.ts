import { firstNotBelow } from '../numeric/interpolate.ts';
import { runsOf } from '../numeric/runs.ts';
import type { GroupGain } from './model.ts';

/** Nodes a sign must hold for; a shorter turn is flicker about zero. */
const LASTING_NODES = 3;

/**
 * Engine speeds at which a gain changes sign for good: at least three nodes of one sign, then at least three of the other.
 * Between the nodes by a straight line.
 */
export function crossoversOf(speedsRpm: ArrayLike<number>, gain: ArrayLike<number>): number[] {
  const nodes = Array.from({ length: gain.length }, (_, node) => node).filter((node) =>
    Number.isFinite(gain[node]!),
  );
  const signs = nodes.map((node) => Math.sign(gain[node]!));
  const lasting = [1, -1]
    .flatMap((sign) => runsOf(signs.map((other) => other === sign)).map((run) => ({ ...run, sign })))
    .filter((run) => run.toRow - run.fromRow + 1 >= LASTING_NODES)
    .sort((a, b) => a.fromRow - b.fromRow);
  return lasting.slice(1).flatMap((run, index) => {
    const before = lasting[index]!;
    if (before.sign === run.sign) return [];
    const [from, to] = [nodes[before.toRow]!, nodes[run.fromRow]!];
    const share = gain[from]! / (gain[from]! - gain[to]!);
    return [speedsRpm[from]! + share * (speedsRpm[to]! - speedsRpm[from]!)];
  });
}

/**
 * The same with the stretch round each in which a band cannot tell the sign: the neighbouring nodes whose band holds zero, or
 * the place alone where none does. A stretch that stays open ends at the window.
 */
export function crossoversWithStretch(
  speedsRpm: ArrayLike<number>,
  gain: ArrayLike<number>,
  low: ArrayLike<number>,
  high: ArrayLike<number>,
): GroupGain['crossovers'] {
  const holdsZero = (node: number) => low[node]! <= 0 && high[node]! >= 0;
  return crossoversOf(speedsRpm, gain).map((atRpm) => {
    const after = firstNotBelow(speedsRpm, atRpm);
    let [first, last] = [after, after - 1];
    while (first > 0 && holdsZero(first - 1)) first -= 1;
    while (last < speedsRpm.length - 1 && holdsZero(last + 1)) last += 1;
    return {
      atRpm,
      lowRpm: Math.min(atRpm, speedsRpm[first] ?? atRpm),
      highRpm: Math.max(atRpm, speedsRpm[last] ?? atRpm),
    };
  });
}
