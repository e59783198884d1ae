import type { MatchCurve, MatchFigure, MatchInput } from '../airpath/index.ts';
import type { RuleThresholds } from './model.ts';
import { type Speaker, speakerOf } from './speaker.ts';

/** A match as the rules look at it. */
export interface MatchAtHand extends Speaker {
  input: MatchInput;
  curve: MatchCurve;
  /** Node with the highest of a figure among those asked for; `null`: it is nowhere known. */
  highest: (of: (node: number) => number) => { node: number; value: number } | null;
  /** A figure at a node. */
  figure: (figure: MatchFigure, node: number) => number;
}

/** Puts together what the rules ask of a match. */
export function matchAtHand(
  subject: string,
  input: MatchInput,
  curve: MatchCurve,
  thresholds: RuleThresholds,
): MatchAtHand {
  return {
    ...speakerOf(subject, thresholds),
    input,
    curve,
    figure: (figure, node) => curve.figures[figure][node] ?? Number.NaN,
    highest: (of) =>
      [...curve.engineSpeedRpm.keys()].reduce<{ node: number; value: number } | null>((best, node) => {
        const value = of(node);
        return Number.isFinite(value) && (best === null || value > best.value) ? { node, value } : best;
      }, null),
  };
}
