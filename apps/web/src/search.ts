/** What stands in the address of a page, read with care: an address may be typed or old. */
import type { CorrectionId } from '@pullbook/core/air';
import { isCorrection } from './view/standards.ts';

type Search = Record<string, unknown>;

const correctionFrom = (value: unknown): CorrectionId | undefined =>
  isCorrection(value) ? value : undefined;

const speedFrom = (value: unknown): number | undefined => {
  const speed = typeof value === 'string' ? Number(value) : value;
  return typeof speed === 'number' && Number.isFinite(speed) && speed > 0 ? speed : undefined;
};

const present = <T extends object>(values: T): T =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as T;

export interface TrialSearch {
  correction?: CorrectionId | undefined;
  /** r/min; both or none */
  from?: number | undefined;
  to?: number | undefined;
}

export function readTrialSearch(search: Search): TrialSearch {
  const from = speedFrom(search.from);
  const to = speedFrom(search.to);
  const window = from !== undefined && to !== undefined && from < to ? { from, to } : {};
  return present({ correction: correctionFrom(search.correction), ...window });
}

export interface PullSearch {
  correction?: CorrectionId | undefined;
}

export const readPullSearch = (search: Search): PullSearch =>
  present({ correction: correctionFrom(search.correction) });

export interface StartSearch {
  /** Ids of pulls to start with, separated by commas. */
  pulls?: string | undefined;
}

export const readStartSearch = (search: Search): StartSearch =>
  present({ pulls: typeof search.pulls === 'string' ? search.pulls : undefined });

export interface AddSearch {
  /** Combination that the files belong to. */
  combination?: string | undefined;
}

export const readAddSearch = (search: Search): AddSearch =>
  present({ combination: typeof search.combination === 'string' ? search.combination : undefined });
