import type { ReachInput } from '@pullbook/core/reach';

/** Ids of all pulls that a search rests on, each once: baseline, fits, what was measured, pairs that show a gain. */
export function pullsBehind({ baseline, builds, breathing, measuredNow }: ReachInput): string[] {
  return [
    ...new Set([
      ...baseline.pullIds,
      ...builds.flatMap(({ match, fit }) => [
        ...(match?.input.baseline.pullIds ?? []),
        ...(fit?.restsOn ?? []),
      ]),
      ...breathing.flatMap(({ pullIds }) => pullIds),
      ...(measuredNow?.pullIds ?? []),
    ]),
  ];
}
