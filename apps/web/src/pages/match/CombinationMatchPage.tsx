import { useParams, useSearch } from '@tanstack/react-router';
import { MatchOfThing } from './MatchOfThing.tsx';

/** The match of one combination, and what could be tried on it. */
export default function CombinationMatchPage() {
  const { id } = useParams({ from: '/combinations/$id/match' });
  const search = useSearch({ from: '/combinations/$id/match' });
  return <MatchOfThing key={id} of={{ kind: 'combination', id }} search={search} />;
}
