import type { MatchCurve, MatchInput } from '../airpath/index.ts';
import type { MatchFit } from '../fit/index.ts';
import { matchAtHand } from './match-at-hand.ts';
import { matchedBelt } from './matched-belt.ts';
import { matchedCompressor } from './matched-compressor.ts';
import { matchedCooler } from './matched-cooler.ts';
import { matchedImpeller } from './matched-impeller.ts';
import { matchedPower } from './matched-power.ts';
import type { Finding, RuleThresholds } from './model.ts';
import { slipByFit } from './slip-by-fit.ts';

/**
 * What the rules say of a match: impeller against its limit without slip, belt, surge and choke, heat, cooler, what the drive
 * takes, the boost index; and of the pulls a fit was held against, slip by what is left of boost. A planning aid: the makers'
 * limits rule.
 *
 * @param subject `combination <id>`; findings about slip are about their `pull <id>`
 * @example findingsOfMatch('combination 3f2a', input, solveMatch(input), { fit }).map(({ remark }) => remark.message)
 */
export function findingsOfMatch(
  subject: string,
  input: MatchInput,
  curve: MatchCurve,
  {
    fit = null,
    thresholds = {},
  }: { fit?: Pick<MatchFit, 'residuals'> | null; thresholds?: RuleThresholds } = {},
): Finding[] {
  const at = matchAtHand(subject, input, curve, thresholds);
  return [
    ...matchedImpeller(at),
    ...matchedBelt(at),
    ...matchedCompressor(at),
    ...matchedCooler(at),
    ...matchedPower(at),
    ...(fit === null ? [] : slipByFit(fit, thresholds)),
  ];
}
