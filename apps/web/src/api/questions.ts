/** What the pages ask the server, each with the choices of view that its figures depend on. */
import type { CorrectionId } from '@pullbook/core/air';
import type { CombinationPage, PullPage, PullRow, TrialCard, TrialPage } from '@pullbook/views';
import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import type { ViewChoices } from '../view/view-choices.ts';
import type { BookSummary, CombinationRow, EngineRow, PackageRow } from './edge.ts';
import { getJson } from './request.ts';

/** Query part that every address with figures carries. */
export function figuresQuery({ units, decimalMark }: ViewChoices): { units: string; decimal: string } {
  return { units, decimal: decimalMark };
}

export const bookQuestion = () =>
  queryOptions({
    queryKey: ['book'],
    queryFn: ({ signal }) => getJson<BookSummary>('/book', {}, signal),
  });

export const trialsQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['trials', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<TrialCard[]>('/trials', figuresQuery(view), signal),
    placeholderData: keepPreviousData,
  });

/** A look at a trial by another standard or window than its own; nothing of it is stored. */
export interface TrialLook {
  correction?: CorrectionId | undefined;
  from?: number | undefined;
  to?: number | undefined;
}

export const trialQuestion = (id: string, look: TrialLook, view: ViewChoices) =>
  queryOptions({
    queryKey: ['trial', id, look, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<TrialPage>(`/trials/${encodeURIComponent(id)}`, { ...figuresQuery(view), ...look }, signal),
    placeholderData: (before) => (before?.id === id ? before : undefined),
  });

export const pullsQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['pulls', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<PullRow[]>('/pulls', figuresQuery(view), signal),
    placeholderData: keepPreviousData,
  });

export const pullQuestion = (id: string, correction: CorrectionId | undefined, view: ViewChoices) =>
  queryOptions({
    queryKey: ['pull', id, correction, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<PullPage>(`/pulls/${encodeURIComponent(id)}`, { ...figuresQuery(view), correction }, signal),
    placeholderData: (before) => (before?.id === id ? before : undefined),
  });

export const combinationsQuestion = () =>
  queryOptions({
    queryKey: ['combinations'],
    queryFn: ({ signal }) => getJson<CombinationRow[]>('/combinations', {}, signal),
  });

export const combinationQuestion = (id: string, view: ViewChoices) =>
  queryOptions({
    queryKey: ['combination', id, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<CombinationPage>(`/combinations/${encodeURIComponent(id)}`, figuresQuery(view), signal),
    placeholderData: (before) => (before?.id === id ? before : undefined),
  });

export const enginesQuestion = () =>
  queryOptions({
    queryKey: ['engines'],
    queryFn: ({ signal }) => getJson<EngineRow[]>('/engines', {}, signal),
  });

export const packagesQuestion = () =>
  queryOptions({
    queryKey: ['packages'],
    queryFn: ({ signal }) => getJson<PackageRow[]>('/packages', {}, signal),
  });
