import type { Pull } from '../pull/index.ts';
import { type Remark, remark } from '../remark/index.ts';
import type { Trial } from './model.ts';

/** What is odd about the pulls a trial names: not in the book, rejected without a reason, of another combination, aborted. */
export function pullRemarks(trial: Trial, pullById: ReadonlyMap<string, Pull>): Remark[] {
  return trial.pulls.flatMap(({ pullId, key, role, reason }) => {
    const pull = pullById.get(pullId);
    if (pull === undefined)
      return [
        remark(
          'caution',
          'pull-not-found',
          `The trial names pull ${pullId}, which is not in the book. Take it off the trial or add the pull.`,
        ),
      ];
    const remarks: Remark[] = [];
    if (role === 'rejected' && !reason?.trim())
      remarks.push(
        remark(
          'caution',
          'rejected-without-reason',
          `"${pull.name}" is rejected without a reason. Say why, so that nobody thinks the best pulls were picked.`,
        ),
      );
    const named = trial.combinations.find((combination) => combination.key === key);
    if (named === undefined)
      remarks.push(
        remark(
          'caution',
          'key-not-in-trial',
          `"${pull.name}" stands for combination ${key}, which the trial does not have. Give it one of ${trial.combinations.map((one) => one.key).join(', ')}.`,
        ),
      );
    else if (pull.combinationId !== null && pull.combinationId !== named.combinationId)
      remarks.push(
        remark(
          'caution',
          'pull-of-another-combination',
          `"${pull.name}" stands for ${key} (${named.shortName}) here but was made with another combination. Check which is right.`,
        ),
      );
    if (role === 'counted') remarks.push(...abortedCounted(pull));
    return remarks;
  });
}

/** A pull that was broken off in the cell and counts all the same. */
export function abortedCounted({ name, outcome }: Pull): Remark[] {
  if (outcome !== 'aborted') return [];
  return [
    remark(
      'caution',
      'aborted-pull-counted',
      `"${name}" was aborted in the cell and is counted. Leave it out, in a trial with a reason, unless it reached its window.`,
    ),
  ];
}
