import { normalCdf } from '../numeric/index.ts';
import type { GroupGain, ScatterOptions } from './model.ts';
import { alphaSpent, criticalZAtLook } from './spending.ts';

/** A look at the verdict before all pulls are made. */
export interface Look {
  number: number;
  of: number;
  /** Share of the whole plan at this look and those before it. */
  fractions: number[];
}

/**
 * Which look the pulls at hand are. Between two planned looks it counts as one in the place of the next, with its own share of
 * the plan; beyond the last it is the last. `null`: one look, nothing is shared.
 *
 * @example 5 pulls of looks at 4, 6 and 8: look 2 of 3, at 4/8 and 5/8 of the plan
 */
export function lookAt(pulls: number, looks: ScatterOptions['looks']): Look | null {
  const at = looks?.at ?? [];
  const last = at.at(-1);
  if (at.length < 2 || last === undefined) return null;
  const before = at.filter((planned) => planned < Math.min(pulls, last));
  return {
    number: before.length + 1,
    of: at.length,
    fractions: [...before, Math.min(pulls, last)].map((planned) => planned / last),
  };
}

/** Two-sided error that one look may use of the whole plan's `alpha`. */
export function errorOfLook(look: Look | null, alpha: number): number {
  return look === null ? alpha : 2 * normalCdf(-criticalZOf(look, alpha));
}

/** What is told of the look beside a gain, for the 95 % band. */
export function lookTold(look: Look | null, alpha: number): GroupGain['look'] {
  if (look === null) return null;
  return {
    number: look.number,
    of: look.of,
    alphaSpent: alphaSpent(look.fractions.at(-1)!, alpha),
    criticalZ: criticalZOf(look, alpha),
  };
}

const MOST_REMEMBERED = 500;
const remembered = new Map<string, number>();

/** Remembered: the same looks come with every gain and every band of a plan, and each costs some milliseconds. */
function criticalZOf({ fractions, number }: Look, alpha: number): number {
  const key = JSON.stringify([fractions, number, alpha]);
  const known = remembered.get(key);
  if (known !== undefined) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const found = criticalZAtLook(fractions, number, alpha);
  remembered.set(key, found);
  return found;
}
