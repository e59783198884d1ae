import type { Publication } from './model.ts';

/** The publications that rest on any of these pulls: what an amendment of one of them may have made old. */
export function publicationsOf(
  publications: readonly Publication[],
  pullIds: readonly string[],
): Publication[] {
  const asked = new Set(pullIds);
  return publications.filter((one) => one.pullIds.some((id) => asked.has(id)));
}
