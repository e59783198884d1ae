import type { ScatterHistory } from '../scatter/index.ts';
import type { DesignedPull } from './designed-pull.ts';
import { gainsOfDesign } from './gain-of-design.ts';
import { oddsToSee, smallestDifference } from './odds-to-see.ts';

export interface DesignQuestion {
  baseline: string;
  history: ScatterHistory;
  gainRatio: number;
  odds: number;
}

export interface DesignJudged {
  /** Chance that the asked gain comes out clear, in the combination that is known worst. */
  odds: number;
  /** Smallest gain that is seen with the asked odds, share of the baseline; worked out when it is asked for. */
  smallest: () => number;
}

/**
 * Judges a design at its last look. With several looks a gain may be clear at an earlier one, so the odds are the least that
 * they can be. `null`: no gain can be made from these pulls.
 */
export function judgeDesign(
  pulls: readonly DesignedPull[],
  looksAt: readonly number[],
  { baseline, history, gainRatio, odds }: DesignQuestion,
): DesignJudged | null {
  const judged = gainsOfDesign(pulls, baseline, history, looksAt);
  if (judged === null) return null;
  return {
    odds: Math.min(...judged.map((one) => oddsToSee(Math.log1p(gainRatio), one))),
    smallest: () => Math.max(...judged.map((one) => smallestDifference(odds, one))),
  };
}
