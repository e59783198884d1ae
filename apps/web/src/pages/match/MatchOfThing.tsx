import { revivedBundle } from '@pullbook/views/match';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { type MatchOf, matchQuestion } from '../../api/match.ts';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import type { MatchSearch } from '../../search.ts';
import { MatchView } from './MatchView.tsx';
import { NoMatch } from './NoMatch.tsx';

/** What a match rests on is fetched once; everything tried on it is worked out in the page. */
export function MatchOfThing({ of, search }: { of: MatchOf; search: MatchSearch }) {
  const match = useQuery(matchQuestion(of));
  const bundle = useMemo(() => (match.data === undefined ? null : revivedBundle(match.data)), [match.data]);
  if (bundle === null) return match.isPending ? <Waiting /> : <Trouble of={match.error} />;
  return (
    <>
      <Trouble of={match.error} />
      {bundle.combinations.length === 0 ? (
        <NoMatch of={of} bundle={bundle} />
      ) : (
        <MatchView of={of} bundle={bundle} search={search} />
      )}
    </>
  );
}
