import type { PresentedStep } from '@pullbook/views/publish';
import { queryOptions } from '@tanstack/react-query';
import { figuresQuery } from '../../api/questions.ts';
import { getJson } from '../../api/request.ts';
import type { ViewChoices } from '../../view/view-choices.ts';

/**
 * A trial step by step, with the figures to point at. Asked once and kept: a talk goes on when the server is gone, and nothing
 * changes on the screen behind who speaks.
 */
export const presentationQuestion = (id: string, view: ViewChoices) =>
  queryOptions({
    queryKey: ['presentation', id, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<{ question: string; steps: PresentedStep[] }>(
        `/trials/${encodeURIComponent(id)}/presentation`,
        figuresQuery(view),
        signal,
      ),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
    refetchOnMount: 'always',
    refetchOnReconnect: false,
    refetchOnWindowFocus: false,
  });
