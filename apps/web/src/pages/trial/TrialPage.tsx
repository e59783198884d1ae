import { useQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { trialQuestion } from '../../api/questions.ts';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { TrialView } from './TrialView.tsx';

/** One trial: what was asked, the answer, the chart, the evidence. */
export default function TrialPage() {
  const { id } = useParams({ from: '/trials/$id' });
  const look = useSearch({ from: '/trials/$id' });
  const view = useViewChoices();
  const trial = useQuery(trialQuestion(id, look, view));
  if (trial.data === undefined) return trial.isPending ? <Waiting /> : <Trouble of={trial.error} />;
  return (
    <>
      <Trouble of={trial.error} />
      <TrialView key={trial.data.id} page={trial.data} look={look} />
    </>
  );
}
