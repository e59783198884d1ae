import { needsTakingApart, type PartChange } from '../combination/index.ts';
import type { Trial } from './model.ts';

/**
 * Keys of the combinations that went on from the baseline without taking the engine apart, so that they share its set-up on
 * its day. What a person said of a combination (`takenApart`) goes before what its parts tell. Where the sheets differ in
 * nothing and nobody said, it counts as taken apart: what was changed is then not known.
 *
 * @example keptOnTheBrake(trial, { B: [pulleyLine] }) // ['B']
 */
export function keptOnTheBrake(
  trial: Pick<Trial, 'combinations'>,
  changes: Readonly<Record<string, readonly PartChange[]>>,
): string[] {
  const [baseline, ...others] = trial.combinations;
  return others
    .filter(({ key, combinationId, takenApart }) => {
      if (takenApart != null) return !takenApart;
      if (combinationId === baseline!.combinationId) return true;
      const lines = changes[key] ?? [];
      return lines.length > 0 && !needsTakingApart(lines);
    })
    .map(({ key }) => key);
}
