import { type Remark, remark } from '../../remark/index.ts';
import { LIMIT_IDS } from '../model.ts';
import { type LimitsAt, plannedAtLimits } from './engine-at-limits.ts';
import { LIMITS } from './limits.ts';

/** What could not be looked at of a planned engine, and which line of the sheet would let it. What does not concern it is left out. */
export function unknownLimits(at: LimitsAt): Remark[] {
  const engine = plannedAtLimits(at, {});
  return LIMIT_IDS.flatMap((id) => {
    const { measure, missing } = LIMITS[id];
    const sentence = measure(engine) === null ? missing(engine) : null;
    return sentence === null ? [] : [remark('note', 'limit-not-looked-at', sentence)];
  });
}
