/** What leaves the shop: the publish page of a trial, the files made of it, what was published. */
import type { ClipDescription, ThemeName } from '@pullbook/charts';
import type { PublicationKind, PublicationLink } from '@pullbook/core/publication';
import type { ShownRemark } from '@pullbook/views';
import type { PictureName, ShownPublication } from '@pullbook/views/publish';
import type { PublishPage } from '@pullbook/workshop';
import { queryOptions, useMutation } from '@tanstack/react-query';
import type { ViewChoices } from '../view/view-choices.ts';
import { bookChanged } from './query-client.ts';
import { figuresQuery, type TrialLook } from './questions.ts';
import { apiAddress, getJson, sendJson } from './request.ts';

export type { PublishPage } from '@pullbook/workshop';

const pathOf = (id: string) => `/trials/${encodeURIComponent(id)}`;

/** How the trial is looked at, and whether it leaves although it holds what is not for everyone. */
export type LeavingLook = TrialLook & { privateToo: boolean };

const lookedFor = ({ privateToo, ...look }: LeavingLook, view: ViewChoices) => ({
  ...asked(look, view),
  ...(privateToo && { privateToo }),
});

const asked = ({ correction, from, to }: TrialLook, view: ViewChoices) => ({
  ...figuresQuery(view),
  correction,
  from,
  to,
});

export const publishQuestion = (id: string, look: TrialLook, view: ViewChoices) =>
  queryOptions({
    queryKey: ['publish', id, asked(look, view)],
    queryFn: ({ signal }) => getJson<PublishPage>(`${pathOf(id)}/publish`, asked(look, view), signal),
    placeholderData: (before) => (before?.id === id ? before : undefined),
  });

/** The clip as its running order has it. */
export const clipQuestion = (id: string, look: LeavingLook, view: ViewChoices) =>
  queryOptions({
    queryKey: ['clip', id, lookedFor(look, view)],
    queryFn: ({ signal }) => getJson<ClipDescription>(`${pathOf(id)}/clip`, lookedFor(look, view), signal),
    placeholderData: (before, query) => (query?.queryKey[1] === id ? before : undefined),
  });

/** A picture of the set to look at; nothing is noted. */
export function stillAddress(
  id: string,
  still: { picture: PictureName; key: string | null; size: string; theme: ThemeName; ground: boolean },
  look: LeavingLook,
  view: ViewChoices,
): string {
  const { key, ...rest } = still;
  return apiAddress(`${pathOf(id)}/still`, {
    ...rest,
    ...(key !== null && { key }),
    format: 'png',
    ...lookedFor(look, view),
  });
}

/** The report to read before it leaves; nothing is noted. */
export const reportAddress = (id: string, look: LeavingLook, view: ViewChoices): string =>
  apiAddress(`${pathOf(id)}/report`, { format: 'html', ...lookedFor(look, view) });

/** What is to be made; missing: as usual. */
export interface PublishAsk {
  kinds: PublicationKind[];
  formats?: string[];
  /** Names of the set's pictures: `gain`; of one combination `alone:B`. Missing: all. */
  pictures?: string[];
  sizes?: string[];
  theme?: ThemeName;
  transparent?: boolean;
  fps?: number;
  paper?: 'a4' | 'letter';
}

/** Something that is being made: where it is, and what came of it. */
export interface PublishJob {
  id: string;
  kinds: PublicationKind[];
  state: 'making' | 'done' | 'cancelled' | 'failed';
  /** What is being made just now, and how far it is, 0 to 1; of all of it. */
  what: string;
  share: number;
  /** The one file, or a zip of several; `null`: not there yet, or none. */
  file: { name: string; bytes: number } | null;
  publicationId: string | null;
  remarks: ShownRemark[];
}

const jobPath = (job: string) => `/publishing/${encodeURIComponent(job)}`;

export const startPublishing = (id: string, ask: PublishAsk, look: LeavingLook, view: ViewChoices) =>
  sendJson<PublishJob>('POST', `${pathOf(id)}/publish`, { ...ask, ...lookedFor(look, view) });
/** What was begun here before of a trial, and is not handed over yet; asked again and again while something is being made. */
export const openJobsQuestion = (id: string) =>
  queryOptions({
    queryKey: ['publishing', id],
    staleTime: 0,
    queryFn: ({ signal }) => getJson<PublishJob[]>(`${pathOf(id)}/publishing`, {}, signal),
    refetchInterval: ({ state }) => (state.data?.some((job) => job.state === 'making') ? 500 : false),
  });
export const publishingOf = (job: string) => getJson<PublishJob>(jobPath(job));
export const stopPublishing = (job: string) => sendJson<unknown>('DELETE', jobPath(job), {});
/** The file lies with the server until it is fetched. */
export const publishedFileAddress = (job: string) => apiAddress(`${jobPath(job)}/file`);

/** What the page made itself: noted with its figures as if the server had made it. */
interface MadeInPage {
  kind: 'clip';
  name: string;
  bytes: number;
  sha256: string;
}

export function useNotePublication(id: string, look: LeavingLook, view: ViewChoices) {
  return useMutation({
    mutationFn: (file: MadeInPage) =>
      sendJson<{ id: string | null }>('POST', `${pathOf(id)}/publications`, {
        files: [file],
        ...lookedFor(look, view),
      }),
    onSuccess: bookChanged,
  });
}

/** All that left the shop, the newest first. */
export const publicationsQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['publications', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<ShownPublication[]>('/publications', figuresQuery(view), signal),
  });

export function useChangeLinks(id: string) {
  return useMutation({
    mutationFn: (links: PublicationLink[]) =>
      sendJson<{ id: string }>('PATCH', `/publications/${encodeURIComponent(id)}`, { links }),
    onSuccess: bookChanged,
  });
}
