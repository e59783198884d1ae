import { useQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { ButtonLink } from '../../parts/Button.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useShopSettings } from '../../view/use-shop-settings.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { Presentation } from './Presentation.tsx';
import styles from './present.module.css';
import { presentationQuestion } from './presentation-question.ts';

/** A trial to stand beside while talking: nothing else on the screen. */
export default function PresentPage() {
  const { id } = useParams({ from: '/trials/$id/present' });
  const { step, follow } = useSearch({ from: '/trials/$id/present' });
  useShopSettings();
  const view = useViewChoices();
  const asked = useQuery(presentationQuestion(id, view));
  if (asked.data === undefined || asked.data.steps.length === 0) {
    return (
      <main className={styles.nothing}>
        {asked.isPending ? <Waiting /> : <Trouble of={asked.error} />}
        {asked.data !== undefined && <p>This trial has no step to show. Put one into its running order.</p>}
        <ButtonLink to="/trials/$id" params={{ id }}>
          Back to the trial
        </ButtonLink>
      </main>
    );
  }
  const { steps } = asked.data;
  const first = steps.findIndex((one) => one.id === step);
  return (
    <Presentation key={id} id={id} steps={steps} firstStep={Math.max(0, first)} isFollower={follow === 1} />
  );
}
