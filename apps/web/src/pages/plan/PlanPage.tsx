import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { type PlanAsk, planQuestion } from '../../api/plan.ts';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { useSettled } from '../combination/use-settled.ts';
import { PlanView } from './PlanView.tsx';

/** Which pulls to make next on a trial, and what they would show. */
export default function PlanPage() {
  const { id } = useParams({ from: '/trials/$id/plan' });
  const [typed, setTyped] = useState<PlanAsk>({});
  const ask = useSettled(typed);
  const plan = useQuery(planQuestion(id, ask, useViewChoices()));
  if (plan.data === undefined) return plan.isPending ? <Waiting /> : <Trouble of={plan.error} />;
  return (
    <PlanView
      page={plan.data}
      ask={ask}
      typed={typed}
      trouble={plan.error}
      onType={(change) => setTyped({ ...typed, ...change })}
    />
  );
}
