import { runsOf } from '../numeric/runs.ts';

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
