import type { StopCriterion } from '@pullbook/core/plan';
import type { PlanPage } from '@pullbook/views';
import { keepPreviousData, queryOptions, useMutation } from '@tanstack/react-query';
import type { ViewChoices } from '../view/view-choices.ts';
import type { Stamped } from './edge.ts';
import { bookChanged } from './query-client.ts';
import { figuresQuery } from './questions.ts';
import { apiAddress, getJson, sendJson } from './request.ts';

/** What is to be planned, as a person writes it. */
export interface PlanAsk {
  gain?: string | undefined;
  odds?: string | undefined;
}

const pathOf = (id: string) => `/trials/${encodeURIComponent(id)}/plan`;

export const planQuestion = (id: string, ask: PlanAsk, view: ViewChoices) =>
  queryOptions({
    queryKey: ['plan', id, ask, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<Stamped<PlanPage>>(pathOf(id), { ...ask, ...figuresQuery(view) }, signal),
    placeholderData: keepPreviousData,
  });

/** Where the sheet is printed from. */
export const sheetAddress = (id: string, ask: PlanAsk, view: ViewChoices, paper: 'a4' | 'letter') =>
  apiAddress(`${pathOf(id)}/sheet`, { ...ask, paper, ...figuresQuery(view) });

export function useKeepPlan(id: string) {
  return useMutation({
    mutationFn: (plan: PlanAsk & { stopCriteria?: StopCriterion[] | null; notes?: string; stamp: string }) =>
      sendJson<{ id: string }>('POST', pathOf(id), plan),
    onSuccess: bookChanged,
  });
}

export function useForgetPlan(id: string) {
  return useMutation({
    mutationFn: (stamp: string) => sendJson<{ id: string }>('DELETE', pathOf(id), { stamp }),
    onSuccess: bookChanged,
  });
}

/** A trial whose baseline is on the brake and would be lost with it. */
export interface BaselineAtRisk {
  trialId: string;
  question: string;
  combinationId: string;
  text: string;
}

/** What would be lost if what is on the brake leaves it; `fitted`: only where that is this combination. */
export const baselinesAtRiskQuestion = (fitted: string | undefined, view: ViewChoices) =>
  queryOptions({
    queryKey: ['baselines-at-risk', fitted, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<BaselineAtRisk[]>('/baselines-at-risk', { fitted, ...figuresQuery(view) }, signal),
  });
