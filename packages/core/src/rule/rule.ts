import type { Provenance } from '../quantity/index.ts';
import { FOOT, MINUTE, toInside } from '../quantity/index.ts';
import type { Rule, Threshold } from './model.ts';

export const COMMON_PRACTICE: Provenance = {
  kind: 'common practice',
  source: 'common practice, no source',
};
export const FROM_MEMORY: Provenance = { kind: 'from memory', source: 'from memory of the trade' };
export const derivedFrom = (formula: string): Provenance => ({ kind: 'derived', source: formula });
export const publishedIn = (source: string): Provenance => ({ kind: 'published', source });

type Given = Pick<Rule, 'title' | 'statement' | 'places' | 'level'> &
  Partial<Pick<Rule, 'thresholds' | 'provenance' | 'wraps' | 'elsewhere'>>;

/** A rule of the catalogue; what is not given: common practice, nothing wrapped, looked at here. */
export const rule = (id: string, given: Given): Rule => ({
  id,
  thresholds: [],
  provenance: COMMON_PRACTICE,
  wraps: [],
  elsewhere: null,
  ...given,
});

const PERCENT = { units: { us: '%', si: '%' } } as const;

/** A share, shown in per cent. */
export const share = (id: string, label: string, percent: number, decimals = 0): Threshold => ({
  id,
  label,
  value: percent / 100,
  kind: 'ratio',
  decimals,
  ...PERCENT,
});

/** A bare number. */
export const bare = (id: string, label: string, value: number, decimals = 2): Threshold => ({
  id,
  label,
  value,
  kind: 'ratio',
  decimals,
});

/** A figure in a unit of the trade, kept in the inside unit. */
export const inUnit = (
  id: string,
  label: string,
  value: number,
  unit: string,
  kind: Threshold['kind'],
): Threshold => ({ id, label, value: toInside(value, unit, kind), kind });

/** A mean piston speed told in feet a minute. */
export const feetPerMinute = (id: string, label: string, value: number): Threshold => ({
  id,
  label,
  value: (value * FOOT) / MINUTE,
  kind: 'speed',
});

/** Drawn where the remark is made. */
export const fixed = (threshold: Threshold): Threshold => ({ ...threshold, fixed: true });
