import { useQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { combinationsQuestion, pullsOfQuestion } from '../../api/questions.ts';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { firstRows } from './first-rows.ts';
import { StartTrialForm } from './StartTrialForm.tsx';

/** One thing to find out: the question, the baseline, what was changed, which pulls. */
export default function StartTrialPage() {
  const search = useSearch({ from: '/trials/new' });
  const view = useViewChoices();
  const tickedIds = search.pulls?.split(',') ?? [];
  const ticked = useQuery(pullsOfQuestion({ id: tickedIds }, view));
  const combination = [...new Set((ticked.data ?? []).flatMap((pull) => pull.combinationId ?? []))];
  const pulls = useQuery({
    ...pullsOfQuestion({ combination }, view),
    enabled: ticked.data !== undefined && !ticked.isPlaceholderData,
  });
  const combinations = useQuery(combinationsQuestion());
  return (
    <Column narrow>
      <PageHead title="Start a trial" />
      <Trouble of={ticked.error ?? pulls.error ?? combinations.error} />
      {pulls.data === undefined || combinations.data === undefined ? (
        [ticked, pulls, combinations].every(({ error }) => error === null) && <Waiting />
      ) : (
        <StartTrialForm combinations={combinations.data} first={firstRows(pulls.data, tickedIds)} />
      )}
    </Column>
  );
}
