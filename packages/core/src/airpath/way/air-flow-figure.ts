import { figureOf } from '../../quantity/index.ts';
import type { Figure } from '../../remark/index.ts';

/**
 * A flow of air as a figure of a sentence, in the units that maps and blowers are told in; fuel is told by the hour.
 *
 * @example airFlowFigure(0.25) // '0.25 kg/s', with US units '33.07 lb/min'
 */
export const airFlowFigure = (kgPerS: number): Figure =>
  figureOf(kgPerS, 'massFlow', { units: { us: 'lb/min', si: 'kg/s' }, decimals: kgPerS < 0.1 ? 3 : 2 });
