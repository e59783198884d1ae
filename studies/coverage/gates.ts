import { type Measure, shareOf, type Tally } from './tally.ts';

/** Between which shares a measure must lie. */
export interface Gate {
  measure: Measure;
  low?: number;
  high?: number;
}

export interface GateOutcome extends Gate {
  share: number;
  error: number;
  /** `outside`: it misses the gate by less than three standard errors, which so many runs cannot tell from passing. */
  outcome: 'inside' | 'outside within error' | 'failed';
}

/** A gate fails only where it is missed by more than three standard errors of the simulation. */
export function throughGate(gate: Gate, tally: Tally): GateOutcome {
  const { share, error } = shareOf(tally, gate.measure);
  const miss = Math.max((gate.low ?? 0) - share, share - (gate.high ?? 1));
  const outcome = miss <= 0 ? 'inside' : miss <= 3 * error ? 'outside within error' : 'failed';
  return { ...gate, share, error, outcome };
}

/** A pointwise band is not made for a family of gains or looks: it is left ungated there. */
export const CALIBRATED: Gate[] = [
  { measure: 'mean', low: 0.93, high: 0.97 },
  { measure: 'pointwise', low: 0.93, high: 0.97 },
  { measure: 'simultaneous', low: 0.93, high: 0.99 },
];
export const NO_FALSE_CLEAR: Gate = { measure: 'falseClear', high: 0.05 };
export const NO_FALSE_SPEED: Gate = { measure: 'falseClearSpeed', high: 0.05 };
