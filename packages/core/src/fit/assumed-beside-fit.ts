import type { Remark } from '../remark/index.ts';
import type { FitParameterId, MatchFit } from './model.ts';

/** What is assumed of a factor only as long as no pull tells it, by the code of its remark. */
const TOLD_BY: Partial<Record<string, FitParameterId>> = { 'work-factor-assumed': 'workFactor' };

/**
 * The assumptions that a fit leaves standing: one whose factor its pulls told is none any more. Without a fit all stand.
 *
 * @example assumedBesideFit(ready.assumptions, fit)
 */
export function assumedBesideFit(assumptions: readonly Remark[], fit: MatchFit | null): Remark[] {
  if (fit === null) return [...assumptions];
  const isTold = (id: FitParameterId | undefined): boolean =>
    fit.parameters.some((one) => one.id === id && one.from.length > 0);
  return assumptions.filter(({ code }) => !isTold(TOLD_BY[code]));
}
