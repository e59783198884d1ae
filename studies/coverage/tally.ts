import type { Outcome } from './judge.ts';

/** Sums of a stretch of runs; stretches add up, in whatever order they come back. */
export interface Tally {
  runs: number;
  sums: Outcome;
  /** Of the squares, for the standard error of a share that is not 0 or 1 in each run. */
  squares: Outcome;
  halfWidths: number[];
}

const KEYS = [
  'mean',
  'pointwise',
  'simultaneous',
  'falseClear',
  'falseClearSpeed',
  'clear',
  'falseNoDifference',
  'halfWidth',
] as const satisfies (keyof Outcome)[];

export type Measure = (typeof KEYS)[number];

const zeros = (): Outcome => Object.fromEntries(KEYS.map((key) => [key, 0])) as unknown as Outcome;

export const emptyTally = (): Tally => ({ runs: 0, sums: zeros(), squares: zeros(), halfWidths: [] });

export function addOutcome(tally: Tally, outcome: Outcome): void {
  tally.runs += 1;
  for (const key of KEYS) {
    tally.sums[key] += outcome[key];
    tally.squares[key] += outcome[key] ** 2;
  }
  tally.halfWidths.push(outcome.halfWidth);
}

export function addTally(tally: Tally, other: Tally): void {
  tally.runs += other.runs;
  for (const key of KEYS) {
    tally.sums[key] += other.sums[key];
    tally.squares[key] += other.squares[key];
  }
  tally.halfWidths.push(...other.halfWidths);
}

/** A share and its Monte-Carlo standard error. With none or all of the runs, as if half a run had gone the other way. */
export function shareOf({ runs, sums, squares }: Tally, measure: Measure): { share: number; error: number } {
  const share = sums[measure] / runs;
  const spread = Math.max(squares[measure] / runs - share ** 2, 0.5 / runs);
  return { share, error: Math.sqrt(spread / runs) };
}

export function medianHalfWidth({ halfWidths }: Tally): number {
  const sorted = halfWidths.toSorted((one, other) => one - other);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
