import { useQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { combinationsQuestion, pullsQuestion } from '../../api/questions.ts';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { firstRows } from './first-rows.ts';
import { StartTrialForm } from './StartTrialForm.tsx';

/** One thing to find out: the question, the baseline, what was changed, which pulls. */
export default function StartTrialPage() {
  const search = useSearch({ from: '/trials/new' });
  const pulls = useQuery(pullsQuestion(useViewChoices()));
  const combinations = useQuery(combinationsQuestion());
  return (
    <Column narrow>
      <PageHead title="Start a trial" />
      <Trouble of={pulls.error ?? combinations.error} />
      {pulls.data === undefined || combinations.data === undefined ? (
        pulls.error === null && combinations.error === null && <Waiting />
      ) : (
        <StartTrialForm
          pulls={pulls.data}
          combinations={combinations.data}
          first={firstRows(pulls.data, search.pulls?.split(',') ?? [])}
        />
      )}
    </Column>
  );
}
