import type { Remark } from '../remark/index.ts';
import { gridPoints } from './grid-points.ts';
import { gridSamples, type Rows } from './grid-samples.ts';
import type { GriddedCurve } from './model.ts';

/**
 * Rows put over engine speed: bin means for a logger's samples, the rows themselves for settled points (whose width
 * nobody sets). `kindOfRows` decides between them.
 */
export function gridCurve(
  rows: Rows,
  kind: GriddedCurve['kindOfRows'],
  binWidthRpm: number | 'adapted' = 'adapted',
): { curve: GriddedCurve; remarks: Remark[] } {
  return kind === 'points' ? gridPoints(rows) : gridSamples(rows, binWidthRpm);
}
