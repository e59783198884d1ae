import type { TrialPlan } from './model.ts';

/**
 * Pulls of a kept plan that are not made yet, each with its number in the plan: the counted pulls of each combination are taken
 * off in the plan's order.
 *
 * @example pullsLeft of A A B B with two of A and one of B counted: [{ key: 'B', order: 4 }]
 */
export function pullsLeft(
  { pulls }: Pick<TrialPlan, 'pulls'>,
  counted: ReadonlyMap<string, number>,
): { key: string; order: number }[] {
  const made = new Map(counted);
  return pulls.flatMap(({ key }, place) => {
    const rest = made.get(key) ?? 0;
    if (rest === 0) return [{ key, order: place + 1 }];
    made.set(key, rest - 1);
    return [];
  });
}
