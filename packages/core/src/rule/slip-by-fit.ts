import type { FitResidual, MatchFit } from '../fit/index.ts';
import { mean, median } from '../numeric/index.ts';
import { percentFigure, speedFigure } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import type { Finding, RuleThresholds } from './model.ts';
import { type Speaker, speakerOf } from './speaker.ts';

/** Share of the highest speed between which the fit's boost is the measure, and nodes at the top that are held against it. */
const MIDDLE_FROM = 0.55;
const MIDDLE_TO = 0.8;
const NODES_OF_MIDDLE = 3;
const NODES_AT_TOP = 3;

/**
 * V13 where a match is fitted: boost at the top against the fitted match, beside what is left in the middle of the speeds, since
 * the fit itself may stand a little high or low. That the engine takes more air at the top is in the match already, so that a
 * good belt is not accused. Where shaft speed was logged it speaks first, of the pull itself.
 */
export function slipByFit(fit: Pick<MatchFit, 'residuals'>, thresholds: RuleThresholds): Finding[] {
  const withShaftSpeed = new Set(
    fit.residuals.filter(({ figure }) => figure === 'impellerSpeedRpm').map(({ pullId }) => pullId),
  );
  return fit.residuals
    .filter(({ figure, pullId }) => figure === 'boost' && !withShaftSpeed.has(pullId))
    .flatMap((residual) => boostAgainstFit(residual, speakerOf(`pull ${residual.pullId}`, thresholds)));
}

/** V13 of one pull by its fitted match. */
export function boostAgainstFit(residual: FitResidual, { find, limit }: Speaker): Finding[] {
  const sag = sagOf(residual);
  const allowed = limit('V13.residual');
  if (sag === null || !(sag.share < -allowed)) return [];
  return [
    find('V13', {
      input: 'Boost against the fitted match',
      kind: 'ratio',
      value: sag.share,
      threshold: -allowed,
      level: 'caution',
      said: sagging(sag.topRpm, sag.share),
    }),
  ];
}

const sagging = (topRpm: number, share: number): Said =>
  said`At ${speedFigure(topRpm)} boost is ${percentFigure(-share)} below the match that is fitted to this engine’s pulls, which has the air it takes in already; at lower speeds it is not. A slipping belt does that, a bypass that opens or a leak too. What would settle it: the speed of the blower shaft, logged.`;

/** Boost at the top over the match's, less the same in the middle of the speeds; `null`: too few of them. */
function sagOf({ engineSpeedRpm, measured, matched }: FitResidual): { share: number; topRpm: number } | null {
  const shares = measured.map((value, node) =>
    matched[node]! > 0 ? value / matched[node]! - 1 : Number.NaN,
  );
  const known = [...shares.keys()].filter((node) => Number.isFinite(shares[node]!));
  const topRpm = engineSpeedRpm[known.at(-1) ?? -1] ?? Number.NaN;
  const middle = known.filter(
    (node) => engineSpeedRpm[node]! >= MIDDLE_FROM * topRpm && engineSpeedRpm[node]! <= MIDDLE_TO * topRpm,
  );
  if (middle.length < NODES_OF_MIDDLE) return null;
  const atTop = mean(known.slice(-NODES_AT_TOP).map((node) => shares[node]!));
  return { share: atTop - median(middle.map((node) => shares[node]!)), topRpm };
}
