import { highestImpellerSpeed } from '../airpath/index.ts';
import { speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import { impellerBeside } from './impeller.ts';
import type { MatchAtHand } from './match-at-hand.ts';
import type { Finding } from './model.ts';

/**
 * V20 of a match: the impeller at zero slip, at the engine's limit and what that may be overrun by. A belt that slips today grips
 * after it was tightened.
 */
export function matchedImpeller(at: MatchAtHand): Finding[] {
  const { drive, compressor } = at.input;
  const top = at.curve.engineSpeedRpm.at(-1);
  if (top === undefined) return [];
  // Who matches above the limit on his sheet means to run there.
  const limit = Math.max(drive.engineSpeedLimitRpm ?? top, top);
  const value = highestImpellerSpeed(drive, limit);
  if (!Number.isFinite(value)) return [];
  const which =
    drive.engineSpeedLimitRpm === null
      ? said`At ${speedFigure(limit)}, the highest speed of the match since no limit of the engine is on the sheet,`
      : limit > drive.engineSpeedLimitRpm
        ? said`At ${speedFigure(limit)}, the highest speed of the match and above the engine’s limit of ${speedFigure(drive.engineSpeedLimitRpm)},`
        : said`At the engine’s limit of ${speedFigure(limit)}`;
  const how = said`${which} and ${speedFigure(drive.overRevMarginRpm)} over it, without slip`;
  const allowed = drive.maximumImpellerSpeedRpm;
  const diameter = compressor.map.isDiameterAssumed ? null : compressor.map.wheelExitDiameter;
  const beside = impellerBeside({ how, value, allowed, diameter }, at);
  if (allowed !== null) return beside;
  return [
    ...beside,
    at.find('V20', {
      input: 'Impeller speed',
      kind: 'engineSpeed',
      value,
      level: 'note',
      said: said`${how} the impeller reaches ${speedFigure(value)}. Its highest speed allowed is not on the sheet, so that nothing can be held against it: look it up at the maker’s before the pull.`,
    }),
  ];
}
