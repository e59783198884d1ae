import type { MatchCurve, MatchFigure } from '../airpath/index.ts';
import { interpolateLinear } from '../numeric/index.ts';

/** Reads figures of a match at an engine speed, straight between its nodes; NaN outside them and where there is no solution. */
export const figureAt =
  ({ engineSpeedRpm, figures }: MatchCurve, at: number) =>
  (figure: MatchFigure): number =>
    interpolateLinear(engineSpeedRpm, figures[figure], at);
