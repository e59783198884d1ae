import { inputAtNodes } from '../airpath/index.ts';
import type { FitTarget } from './model.ts';

/** Nodes of a baseline that are solved while it is fitted: curves are straight enough between them, and readings no closer. */
const MOST_NODES = 24;

/** A target whose match has fewer nodes. */
export function coarse({ input, ...target }: FitTarget): FitTarget {
  const last = input.baseline.engineSpeedRpm.length - 1;
  if (last < MOST_NODES) return { input, ...target };
  const nodes = Array.from({ length: MOST_NODES }, (_, place) =>
    Math.round((place * last) / (MOST_NODES - 1)),
  );
  return { ...target, input: inputAtNodes(input, nodes) };
}
