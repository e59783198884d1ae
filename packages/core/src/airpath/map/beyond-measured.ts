import type { MatchCurve, MatchInput, SpeedLine } from '../model.ts';
import { speedLineAt } from './speed-line.ts';

/** Whether lines that were measured on either side cover a flow, kg/s corrected, without a scale on flow. */
export const isMeasuredAt = ({ measuredFlow }: SpeedLine, flow: number): boolean =>
  measuredFlow !== null && flow >= measuredFlow[0] && flow <= measuredFlow[1];

/**
 * At which nodes a match goes beyond what was measured of its map, whatever its state: a point left of the highest pressure ratio can
 * lie beyond it, too. Of a rated map all that runs through the compressor does. Not where it is bypassed, or without solution.
 *
 * @example beyondMeasured(input, solveMatch(input)) // [true, false, false]
 */
export function beyondMeasured({ compressor }: MatchInput, { figures, state }: MatchCurve): boolean[] {
  const { map, flowScale = 1 } = compressor;
  return state.map((place, node) => {
    if (place === 'bypassed' || place === 'no solution') return false;
    const line = speedLineAt(map, figures.correctedSpeedRpm[node]!);
    return !isMeasuredAt(line, figures.correctedFlow[node]! / flowScale);
  });
}
