import { useParams, useSearch } from '@tanstack/react-router';
import { MatchOfThing } from './MatchOfThing.tsx';

/** The match of a trial: its combinations beside one another, and what could be tried on them. */
export default function TrialMatchPage() {
  const { id } = useParams({ from: '/trials/$id/match' });
  const search = useSearch({ from: '/trials/$id/match' });
  return <MatchOfThing key={id} of={{ kind: 'trial', id }} search={search} />;
}
