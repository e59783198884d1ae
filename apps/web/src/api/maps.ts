import type { MapCard, MapPage } from '@pullbook/views/match';
import { queryOptions, useMutation } from '@tanstack/react-query';
import type { ViewChoices } from '../view/view-choices.ts';
import type { Stamped } from './edge.ts';
import { bookChanged } from './query-client.ts';
import { figuresQuery } from './questions.ts';
import { getJson, sendJson } from './request.ts';

export const mapsQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['maps', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<MapCard[]>('/maps', figuresQuery(view), signal),
  });

export const mapQuestion = (id: string, view: ViewChoices) =>
  queryOptions({
    queryKey: ['map', id, figuresQuery(view)],
    queryFn: ({ signal }) =>
      getJson<Stamped<MapPage>>(`/maps/${encodeURIComponent(id)}`, figuresQuery(view), signal),
    placeholderData: (before) => (before?.id === id ? before : undefined),
  });

/** A map as text: open CSV, with its name in it or beside it. */
export interface NewMap {
  text: string;
  name?: string;
  fileName?: string;
}

export function useAddMap() {
  return useMutation({
    mutationFn: (map: NewMap) => sendJson<{ id: string; name: string }>('POST', '/maps', map),
    onSuccess: bookChanged,
  });
}

export function useChangeMap(id: string) {
  return useMutation({
    mutationFn: (change: { name?: string; notes?: string; reason: string; stamp?: string | undefined }) =>
      sendJson<{ id: string; name: string }>('PATCH', `/maps/${encodeURIComponent(id)}`, change),
    onSuccess: bookChanged,
  });
}
