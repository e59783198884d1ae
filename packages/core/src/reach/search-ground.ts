import { type Baseline, baselineAtNodes } from '../airpath/index.ts';
import { type DriveSize, driveSizes } from './drive-change.ts';
import type { ReachInput } from './model.ts';
import { nodesFor } from './nodes.ts';
import { sheetWriter } from './sheet-with.ts';

/** What a search keeps between one set of changes and the next, at some nodes of the baselines. */
export interface SearchGround {
  input: ReachInput;
  /** Some nodes stand for all, and what a fuel does is taken between a few ratios: to find what may serve, not to show it. */
  isRough: boolean;
  /** Baseline of each build at the nodes. */
  baselines: Baseline[];
  write: ReturnType<typeof sheetWriter>;
  sizes: (build: number, by: DriveSize['by']) => DriveSize[];
  /** What is worked out once and asked for again, by a name of its own. */
  once: <T>(name: string, made: () => T) => T;
}

/** @param most nodes to look at; missing: all */
export function searchGround(input: ReachInput, most = Number.POSITIVE_INFINITY): SearchGround {
  const kept = new Map<string, unknown>();
  const once = <T>(name: string, made: () => T): T => {
    if (!kept.has(name)) kept.set(name, made());
    return kept.get(name) as T;
  };
  return {
    input,
    isRough: Number.isFinite(most),
    baselines: input.builds.map(({ madeOf }) => {
      const baseline = madeOf?.baseline ?? input.baseline;
      return baselineAtNodes(baseline, nodesFor(baseline, input.target, most));
    }),
    write: sheetWriter(),
    sizes: (build, by) => once(`sizes ${build} ${by}`, () => driveSizes(input, input.builds[build]!, by)),
    once,
  };
}
