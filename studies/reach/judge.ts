import type { Held } from './run.ts';

/** What is asked of a band that says 95 of 100, where there are this many rungs or more. */
export const GATE = { low: 0.9, high: 0.995 };

/** How rungs did together; shares. */
export interface Judged {
  rungs: number;
  bias: number;
  off: number;
  width: number;
  held: number;
  chance: number;
  reached: number;
}

export function judged(all: readonly Held[]): Judged {
  const mean = (of: (one: Held) => number) =>
    all.reduce((sum, one) => sum + of(one), 0) / Math.max(1, all.length);
  return {
    rungs: all.length,
    bias: mean(({ off }) => off),
    off: Math.sqrt(mean(({ off }) => off ** 2)),
    width: mean(({ width }) => width),
    held: mean(({ held }) => Number(held)),
    chance: mean(({ chance }) => chance),
    reached: mean(({ reached }) => Number(reached)),
  };
}

/** Chances are told apart so. */
export const STEPS = [
  [0, 0.2],
  [0.2, 0.5],
  [0.5, 0.7],
  [0.7, 0.9],
  [0.9, 1.01],
] as const;

export const inStep = (all: readonly Held[], [from, to]: (typeof STEPS)[number]): Held[] =>
  all.filter(({ chance }) => chance >= from && chance < to);

/** Rungs of a chance of 0.5 to 0.9 must not reach more seldom than said, by more than this. */
const OVERSAID = 0.1;

/** What is asked and does not hold, in words. */
export function missed(all: readonly Held[]): string[] {
  return [true, false].flatMap((isFitted) => {
    const of = all.filter((one) => one.isFitted === isFitted);
    const name = isFitted ? 'after three pulls' : 'before any boosted pull';
    const { held } = judged(of);
    const { chance, reached } = judged(of.filter((one) => one.chance >= 0.5 && one.chance < 0.9));
    return [
      ...(held >= GATE.low && held <= GATE.high
        ? []
        : [`${name}, bands hold in ${(100 * held).toFixed(1)} %`]),
      ...(reached >= chance - OVERSAID
        ? []
        : [
            `${name}, of rungs said to reach in ${(100 * chance).toFixed(0)} of 100 cases ${(100 * reached).toFixed(0)} do`,
          ]),
    ];
  });
}
