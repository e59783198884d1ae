import { type MatchInput, solveMatch } from '../airpath/index.ts';
import { plainInput } from '../airpath/match/match-input.testing.ts';
import type { MatchFit } from '../fit/index.ts';
import { findingsOfMatch } from './findings-of-match.ts';
import type { Finding } from './model.ts';

type Changes = Partial<{ [Part in keyof MatchInput]: Partial<MatchInput[Part]> }>;

/** What the rules say of the plain match with these things changed. */
export function ofMatch(changes: Changes = {}, fit: Pick<MatchFit, 'residuals'> | null = null): Finding[] {
  const plain = plainInput();
  const input = { ...plain };
  for (const [part, change] of Object.entries(changes) as [keyof MatchInput, object][])
    Object.assign(input, { [part]: { ...(plain[part] as object), ...change } });
  return findingsOfMatch('combination c', input, solveMatch(input), { fit });
}

const SPEEDS = Array.from({ length: 36 }, (_, node) => 3000 + 100 * node);
const pressure = (speed: number) => 70e3 * (speed / 6500) ** 2;

/** A fit whose boost is measured so much off the match, as a share at each speed. */
export function fitWithBoostOff(share: (speed: number) => number, pullId = 'p'): Pick<MatchFit, 'residuals'> {
  const measured = SPEEDS.map((speed) => pressure(speed) * (1 + share(speed)));
  const matched = SPEEDS.map(pressure);
  return { residuals: [{ pullId, figure: 'boost', engineSpeedRpm: SPEEDS, measured, matched, rms: 0 }] };
}
