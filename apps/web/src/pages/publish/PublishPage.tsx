import { useQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { publishQuestion } from '../../api/publish.ts';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { PublishView } from './PublishView.tsx';

/** From an answered trial to pictures, a clip, a report and data; what will leave the shop is said before it does. */
export default function PublishPage() {
  const { id } = useParams({ from: '/trials/$id/publish' });
  const look = useSearch({ from: '/trials/$id/publish' });
  const page = useQuery(publishQuestion(id, look, useViewChoices()));
  if (page.data === undefined) return page.isPending ? <Waiting /> : <Trouble of={page.error} />;
  return (
    <>
      <Trouble of={page.error} />
      <PublishView key={page.data.id} page={page.data} look={look} />
    </>
  );
}
