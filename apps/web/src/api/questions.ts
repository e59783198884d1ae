/** What the pages ask the server, each with the choices of view that its figures depend on. */
import type { CorrectionId } from '@pullbook/core/air';
import type { CombinationPage, PullPage, PullRow, RecordedPage, TrialCard, TrialPage } from '@pullbook/views';
import type { ShownPublication } from '@pullbook/views/publish';
import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import type { PullsSearch } from '../search.ts';
import type { ViewChoices } from '../view/view-choices.ts';
import type {
  BookReport,
  CombinationRow,
  EngineRow,
  HistoryStep,
  LikeReport,
  ListPage,
  PackageRow,
  PullListPage,
  SheetAtHand,
  SheetWords,
  Stamped,
  WrittenFields,
} from './edge.ts';
import { getJson, sendJson } from './request.ts';

/** Query part that every address with figures carries. */
export function figuresQuery({ units, decimalMark }: ViewChoices): { units: string; decimal: string } {
  return { units, decimal: decimalMark };
}

export const bookQuestion = () =>
  queryOptions({
    queryKey: ['book'],
    queryFn: ({ signal }) => getJson<BookReport>('/book', {}, signal),
  });

/** Which page of the trials. */
export interface TrialsAsk {
  find?: string | undefined;
  page?: number | undefined;
}

export const trialsQuestion = (search: TrialsAsk, view: ViewChoices) =>
  queryOptions({
    queryKey: ['trials', search, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<ListPage<TrialCard>>('/trials', { ...search, ...figuresQuery(view) }, signal),
    placeholderData: keepPreviousData,
  });

/** A look at a trial by another standard or window than its own; nothing of it is stored. */
export interface TrialLook {
  correction?: CorrectionId | undefined;
  from?: number | undefined;
  to?: number | undefined;
}

export const trialQuestion = (id: string, { correction, from, to }: TrialLook, view: ViewChoices) => {
  const look = { correction, from, to };
  const queryKey = ['trial', id, look, figuresQuery(view)] as const;
  return queryOptions({
    queryKey,
    queryFn: async ({ signal, client }) => {
      const ask = (early?: '1') =>
        getJson<Stamped<TrialPage> & { isWhole: boolean }>(
          `/trials/${encodeURIComponent(id)}`,
          { ...figuresQuery(view), ...look, early },
          signal,
        );
      if (client.getQueryData(queryKey) !== undefined) return ask();
      // The page first, and what its supercharger match says after: fitting one takes a while.
      const first = await ask('1');
      if (first.isWhole) return first;
      client.setQueryData(queryKey, first);
      return ask();
    },
    placeholderData: (before) => (before?.id === id ? before : undefined),
  });
};

export const pullsQuestion = (search: PullsSearch, view: ViewChoices) =>
  queryOptions({
    queryKey: ['pulls', search, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<PullListPage<PullRow>>('/pulls', { ...search, ...figuresQuery(view) }, signal),
    placeholderData: keepPreviousData,
    // What the server still reads is there a moment later.
    refetchInterval: ({ state }) => (state.data?.stillReading ? 2000 : false),
  });

/** As many as the server gives at once. */
const MOST = 500;

/** The pulls of these combinations, or those of these ids. */
export const pullsOfQuestion = (
  of: { combination: readonly string[] } | { id: readonly string[] },
  view: ViewChoices,
) =>
  queryOptions({
    queryKey: ['pulls', of, figuresQuery(view)],
    queryFn: async ({ signal }): Promise<PullRow[]> => {
      if (Object.values(of).flat().length === 0) return [];
      const asked = { ...of, size: MOST, ...figuresQuery(view) };
      return (await getJson<PullListPage<PullRow>>('/pulls', asked, signal)).rows;
    },
    placeholderData: keepPreviousData,
  });

/** The last thing that was done to the book. */
export const lastActQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['history', 'last', figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<{ step: HistoryStep | null }>('/history/last', figuresQuery(view), signal),
  });

/** Publications in which something is no longer so after the last thing that was done to the book. */
export const lastErrataQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['history', 'last', 'errata', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<ShownPublication[]>('/history/last/errata', figuresQuery(view), signal),
  });

export const pullQuestion = (id: string, correction: CorrectionId | undefined, view: ViewChoices) =>
  queryOptions({
    queryKey: ['pull', id, correction, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<Stamped<PullPage>>(
        `/pulls/${encodeURIComponent(id)}`,
        { ...figuresQuery(view), correction },
        signal,
      ),
    placeholderData: (before) => (before?.id === id ? before : undefined),
  });

/** How a recording is looked at; nothing of it is stored. */
export interface RecordedAsk {
  over?: 'speed' | undefined;
  low?: number | undefined;
  high?: number | undefined;
  channels?: string | undefined;
}

export const recordedQuestion = (id: string, ask: RecordedAsk, view: ViewChoices) =>
  queryOptions({
    queryKey: ['recorded', id, ask, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<RecordedPage>(
        `/pulls/${encodeURIComponent(id)}/recorded`,
        { ...figuresQuery(view), ...ask },
        signal,
      ),
    // Another zoom or another choice of channels of the same pull: the earlier picture stands until it is there.
    placeholderData: (before, query) =>
      query?.queryKey[1] === id && before?.over === (ask.over ?? 'time') ? before : undefined,
  });

/** What a new pull has in common with another; `last`: the one added last. `null`: the book has none yet. */
export const likeQuestion = (like: string, { units }: ViewChoices) =>
  queryOptions({
    queryKey: ['like', like, units],
    queryFn: ({ signal }) =>
      getJson<{ report: LikeReport | null }>(`/like/${encodeURIComponent(like)}`, { units }, signal).then(
        ({ report }) => report,
      ),
  });

/** What is written down about a pull, for the form that mends it. */
export const writtenQuestion = (id: string, { units }: ViewChoices) =>
  queryOptions({
    queryKey: ['written', id, units],
    queryFn: ({ signal }) =>
      getJson<{ fields: WrittenFields }>(`/pulls/${encodeURIComponent(id)}/written`, { units }, signal),
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
      getJson<Stamped<CombinationPage>>(
        `/combinations/${encodeURIComponent(id)}`,
        figuresQuery(view),
        signal,
      ),
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

/** What a sheet may hold. It comes with the program, so once is enough. */
export const sheetWordsQuestion = () =>
  queryOptions({
    queryKey: ['sheet-words'],
    queryFn: ({ signal }) => getJson<SheetWords>('/sheet-words', {}, signal),
    staleTime: Number.POSITIVE_INFINITY,
  });

/** A sheet somebody works at, as the server sees it; nothing of it is kept. */
export const sheetLookQuestion = (sheetText: string, madeFromId: string | undefined) =>
  queryOptions({
    queryKey: ['sheet-look', madeFromId, sheetText],
    queryFn: () => sendJson<SheetAtHand>('POST', '/sheets/look', { sheetText, madeFromId }),
    placeholderData: keepPreviousData,
    gcTime: 10_000,
  });
