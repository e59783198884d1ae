import type { TrialPlan } from './model.ts';

/**
 * A kept plan when the combinations of its trial were given other keys: its pulls follow them, those of a combination that
 * left are out, and the looks stand after the pulls that are left of each; `null`: nothing is left of it.
 *
 * @example planUnderKeys({ ...plan, pulls: [{ key: 'A' }, { key: 'C' }], looksAt: [2] }, (key) => (key === 'C' ? undefined : key)) // pulls: [A], looksAt: [1]
 */
export function planUnderKeys(
  plan: TrialPlan,
  keyNow: (key: string) => string | undefined,
): TrialPlan | null {
  const now = plan.pulls.map(({ key }) => keyNow(key));
  const leftOf = (first: number) => now.slice(0, first).filter((key) => key !== undefined).length;
  const pulls = now.flatMap((key) => (key === undefined ? [] : [{ key }]));
  if (pulls.length === 0) return null;
  const looksAt = [...new Set(plan.looksAt.map(leftOf))].filter((at) => at > 0 && at < pulls.length);
  return { ...plan, pulls, looksAt: [...looksAt, pulls.length] };
}
