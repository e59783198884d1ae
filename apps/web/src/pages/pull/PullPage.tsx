import { useQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { pullQuestion } from '../../api/questions.ts';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { PullView } from './PullView.tsx';

/** One measured run. */
export default function PullPage() {
  const { id } = useParams({ from: '/pulls/$id' });
  const look = useSearch({ from: '/pulls/$id' });
  const pull = useQuery(pullQuestion(id, look.correction, useViewChoices()));
  if (pull.data === undefined) return pull.isPending ? <Waiting /> : <Trouble of={pull.error} />;
  return <PullView key={pull.data.id} page={pull.data} look={look} />;
}
