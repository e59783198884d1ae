import { studentTQuantile } from '../numeric/index.ts';
import { criticalLargestT } from './largest-t.ts';

/** Several gains over one baseline, each held against zero. */
export interface Family {
  count: number;
  /** Smallest correlation between two of the gains. */
  sharedShare: number;
}

/**
 * Half-width over the standard error so that all gains of a family stay inside with 1 - error: Student's t for one, for more
 * the largest of several t that share the baseline's scatter (as Dunnett's, 1955).
 */
export function criticalOfFamily(
  { count, sharedShare }: Family,
  degreesOfFreedom: number,
  error: number,
): number {
  if (count === 1) return studentTQuantile(1 - error / 2, degreesOfFreedom);
  return criticalLargestT({
    count,
    sharedShare,
    neighbourCorrelation: 0,
    degreesOfFreedom,
    confidence: 1 - error,
  });
}
