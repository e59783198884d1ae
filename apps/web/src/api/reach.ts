/** A power asked of a combination: what a search rests on, answers that were kept, what becomes of their rungs, the parts list. */
import type { ThemeName } from '@pullbook/charts';
import type { EnquiryAsked } from '@pullbook/core/reach';
import type { ShownRemark } from '@pullbook/views';
import type { EnquiryCard, KeptEnquiry, PartsPage, ReachBundle } from '@pullbook/views/reach';
import { keepPreviousData, queryOptions, useMutation } from '@tanstack/react-query';
import type { AskedSearch, ReachAsk } from '../search.ts';
import { useViewChoices, type ViewChoices } from '../view/view-choices.ts';
import type { ListPage } from './edge.ts';
import { bookChanged, queryClient } from './query-client.ts';
import { figuresQuery } from './questions.ts';
import { apiAddress, getJson, sendJson } from './request.ts';

/** All that the page searches by; it comes once for a question, and the search is the page's own. */
export const reachQuestion = (id: string, ask: ReachAsk) =>
  queryOptions({
    queryKey: ['reach', id, ask],
    queryFn: ({ signal }) =>
      getJson<ReachBundle>(`/combinations/${encodeURIComponent(id)}/reach`, { ...ask }, signal),
    placeholderData: (before, query) => (query?.queryKey[1] === id ? before : undefined),
  });

export const enquiriesQuestion = (search: AskedSearch, view: ViewChoices) => {
  const { find, page } = search;
  return queryOptions({
    queryKey: ['enquiries', find, page, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<ListPage<EnquiryCard>>('/enquiries', { find, page, ...figuresQuery(view) }, signal),
    placeholderData: keepPreviousData,
  });
};

const pathOf = (id: string) => `/enquiries/${encodeURIComponent(id)}`;

/** An answer as it was given, and what became of it. */
export const enquiryQuestion = (id: string) =>
  queryOptions({
    queryKey: ['enquiry', id],
    queryFn: ({ signal }) => getJson<KeptEnquiry>(pathOf(id), {}, signal),
  });

/** Has the server search again by the same seed, and keep that. */
export const keepEnquiry = (enquiry: { combinationId: string; asked: EnquiryAsked; question?: string }) =>
  sendJson<{ id: string }>('POST', '/enquiries', enquiry);

/** Makes a combination of a rung, in a trial of its own with its plan. */
export const planRung = (id: string, rungId: string) =>
  sendJson<{ trial: { id: string } }>('POST', `${pathOf(id)}/rungs/${encodeURIComponent(rungId)}/plan`, {});

/** How an answer card is made. */
export interface CardAsk {
  rung?: string | undefined;
  shows: 'words' | 'curves';
  size: string;
  theme: ThemeName;
  ground: boolean;
  format: 'png' | 'svg' | 'pdf';
}

/** The card to look at, or as a file to keep; nothing is noted. */
export const cardAddress = (id: string, ask: CardAsk, view: ViewChoices, download?: '1'): string =>
  apiAddress(`${pathOf(id)}/card`, { ...ask, ...figuresQuery(view), download });

/** Notes on the enquiry that the card leaves the shop. */
export function useLeaveCard(id: string, view: ViewChoices) {
  return useMutation({
    mutationFn: (ask: CardAsk) =>
      sendJson<{ name: string; remarks: ShownRemark[] }>('POST', `${pathOf(id)}/cards`, {
        ...ask,
        ...figuresQuery(view),
      }),
    onSuccess: bookChanged,
  });
}

/** A parts list as it is written, a list a kind, and as it is shown; row by row the same. */
export interface PartsAtHand {
  parts: WrittenParts;
  page: PartsPage;
  /** The shop changed it; else it is what is usual. */
  isOwn: boolean;
  stamp: string;
}

/** One thing that can be bought, its figures as text with units. */
export type WrittenPart = Record<string, string | number | undefined>;

export type PartsKind = PartsPage['kinds'][number]['id'];

/** What is left out stands as it was. */
export type WrittenParts = Partial<Record<PartsKind, WrittenPart[]>> & {
  costs?: Partial<Record<string, number>>;
  binding?: Partial<Record<string, boolean>>;
};

export const partsQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['parts', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<PartsAtHand>('/parts', figuresQuery(view), signal),
  });

/** Lists to put in place of the shop's, worked out of what stands when it is their turn; `null`: back to what is usual. */
interface PartsChange {
  parts: (at: WrittenParts) => WrittenParts | null;
  /** Of what was looked at; missing: of what stands on the page. */
  stamp?: string | undefined;
}

/** Changes of the parts list, one after the other, however fast they are made. */
export function useChangeParts() {
  const { queryKey } = partsQuestion(useViewChoices());
  return useMutation({
    scope: { id: 'parts' },
    mutationFn: ({ parts, stamp }: PartsChange) => {
      const at = queryClient.getQueryData(queryKey);
      return sendJson<unknown>('PUT', '/parts', { parts: parts(at?.parts ?? {}), stamp: stamp ?? at?.stamp });
    },
    onSuccess: bookChanged,
  });
}
