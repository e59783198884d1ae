import type { MatchBands, MatchCase } from '@pullbook/core/airpath';
import type { MatchBundle } from '@pullbook/views/match';
import { queryOptions, useMutation } from '@tanstack/react-query';
import { bookChanged } from './query-client.ts';
import { getJson, sendJson } from './request.ts';

/** What a match is of. */
export type MatchOf = { kind: 'trial' | 'combination'; id: string };

const pathOf = ({ kind, id }: MatchOf) => `/${kind}s/${encodeURIComponent(id)}/match`;

/** What the page needs to work a match by itself, as it comes over the wire. */
export const matchQuestion = (of: MatchOf) =>
  queryOptions({
    queryKey: ['match', of.kind, of.id],
    queryFn: ({ signal }) => getJson<MatchBundle>(pathOf(of), {}, signal),
  });

/** As many as a band is made of on a page, and where their chance begins: the same page twice, the same band. */
const DRAWS = 1000;
const SEED = 1;

/** How uncertain matches and their differences are; asked again for every what-if, the earlier question dropped. */
export const bandsQuestion = (key: unknown, cases: readonly MatchCase[]) =>
  queryOptions({
    queryKey: ['match-bands', key],
    queryFn: ({ signal }) =>
      sendJson<MatchBands>('POST', '/match/bands', { cases, draws: DRAWS, seed: SEED }, signal),
    gcTime: 60_000,
    staleTime: Number.POSITIVE_INFINITY,
  });

/** Keeps what the match foretells of a combination that was never pulled. */
export function useKeepPrediction(trialId: string) {
  return useMutation({
    mutationFn: (key: string) =>
      sendJson<{ predictions: { id: string }[] }>(
        'POST',
        `/trials/${encodeURIComponent(trialId)}/match/keep`,
        {
          key,
          draws: DRAWS,
          seed: SEED,
        },
      ),
    onSuccess: bookChanged,
  });
}
