import { QueryClient } from '@tanstack/react-query';
import { ApiTrouble } from './request.ts';

export const queryClient = new QueryClient({
  defaultOptions: {
    queries: {
      // The book is on this machine and only this page or a command changes it: look again when the page is looked at again.
      staleTime: 5_000,
      retry: (failures, trouble) =>
        failures < 2 && trouble instanceof ApiTrouble && trouble.code === 'unreachable',
    },
  },
});

/** After anything was written: every page part asks again. */
export function bookChanged(): Promise<void> {
  return queryClient.invalidateQueries();
}
