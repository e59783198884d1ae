import { type CombinationSheet, whatChanged } from '../combination/index.ts';
import type { NearPull, Rung } from './model.ts';

/** A pulled combination near the target, before it is held against the rungs. */
export interface NearCandidate extends Omit<NearPull, 'separates'> {
  sheet: CombinationSheet;
}

/**
 * Pulled combinations with what separates each from each rung: the lines of their sheets that differ, the pulled one first. A rung of an
 * answer that was kept has no sheet any more and is left out.
 *
 * @example nearPullsOf([{ name: 'longer cam', …, sheet }], answer.rungs)[0].separates['80-mm'] // [{ label: 'Drive, blower pulley', before: '84 mm', after: '80 mm', … }]
 */
export const nearPullsOf = (candidates: readonly NearCandidate[], rungs: readonly Rung[]): NearPull[] =>
  candidates.map(({ sheet, ...near }) => ({
    ...near,
    separates: Object.fromEntries(
      rungs.flatMap(({ id, made }) => (made === null ? [] : [[id, whatChanged(sheet, made.sheet, [])]])),
    ),
  }));
