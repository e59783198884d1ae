import { type EngineRun, FORETOLD, type Foretold, type Held } from './run.ts';

/** What is asked of a band that says 95 of 100: wide enough, and not so wide that it says nothing. */
export const GATE = { low: 0.9, high: 0.99 };

export type Kind = 'unfitted' | 'fitted' | 'againstRead';

/** How a figure's bands did over engines. Shares; an engine counts as one, for its speeds go together. */
export interface Judged {
  figure: Foretold;
  engines: number;
  held: number;
  /** Standard error of that, by engines. */
  error: number;
  /** Mean width of the band, and root mean square of its middle's distance, shares of the figure. */
  width: number;
  off: number;
}

export function judged(runs: readonly EngineRun[], kind: Kind, figure: Foretold): Judged {
  const all = runs.map((run): Held => run[kind][figure]).filter(({ held }) => held.length > 0);
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
  const shares = all.map(({ held }) => mean(held));
  const held = mean(shares);
  return {
    figure,
    engines: all.length,
    held,
    error: Math.sqrt(mean(shares.map((share) => (share - held) ** 2)) / all.length),
    width: mean(all.map(({ width }) => width)),
    off: Math.sqrt(mean(all.map(({ off }) => off ** 2))),
  };
}

/** What is gated and does not hold: before a pull and after. */
export const missed = (runs: readonly EngineRun[]): Judged[] =>
  (['unfitted', 'fitted'] as const)
    .flatMap((kind) => FORETOLD.map((figure) => judged(runs, kind, figure)))
    .filter(({ held }) => !(held >= GATE.low && held <= GATE.high));
