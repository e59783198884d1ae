/** What a rescue of the book has to say. */
import type { RescueReport } from '@pullbook/workshop';
import { queryOptions, useMutation } from '@tanstack/react-query';
import { bookChanged } from './query-client.ts';
import { getJson, sendJson } from './request.ts';

export const rescueQuestion = () =>
  queryOptions({
    queryKey: ['rescue'],
    queryFn: ({ signal }) => getJson<{ report: RescueReport | null }>('/rescue', {}, signal),
  });

export function usePutRescueAway() {
  return useMutation({ mutationFn: () => sendJson('POST', '/rescue/away', {}), onSuccess: bookChanged });
}
