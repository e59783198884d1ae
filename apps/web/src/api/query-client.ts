import { QueryClient } from '@tanstack/react-query';
import { noteAct } from './acts.ts';
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

/** After anything was written: every page part asks again, and what was done is said with its undo. */
export function bookChanged(): Promise<void> {
  noteAct();
  return queryClient.invalidateQueries();
}

/** The stamp of the page of a thing as it stands on the screen, for a change made from it. */
export function stampOnPage(kind: 'pull' | 'trial' | 'combination', id: string): string | undefined {
  const pages = queryClient.getQueriesData<{ stamp?: string }>({ queryKey: [kind, id] });
  return pages.findLast(([, page]) => page?.stamp !== undefined)?.[1]?.stamp;
}
