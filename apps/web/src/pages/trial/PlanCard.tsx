import type { TrialPage } from '@pullbook/views';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { baselinesAtRiskQuestion } from '../../api/plan.ts';
import { useKey } from '../../keys/use-key.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './trial.module.css';

/** What is still to be pulled by the plan, and whether the baseline is about to be lost. */
export function PlanCard({ page }: { page: TrialPage }) {
  const navigate = useNavigate();
  const view = useViewChoices();
  const isSurvey = page.settings.kind === 'survey';
  const risks = useQuery({ ...baselinesAtRiskQuestion(undefined, view), enabled: !isSurvey });
  useKey('next', () => {
    if (!isSurvey) void navigate({ to: '/trials/$id/plan', params: { id: page.id } });
  });
  if (isSurvey) return null;
  const risk = risks.data?.find(({ trialId }) => trialId === page.id);
  const [next] = page.planned;
  return (
    <Card title="Plan">
      {risk !== undefined && <p>{risk.text}</p>}
      <p>
        {next === undefined
          ? 'No planned pull is open.'
          : `${page.planned.length} planned ${page.planned.length === 1 ? 'pull is' : 'pulls are'} still to make. Next: ${next.text.replace('planned: ', '')}.`}
      </p>
      <div className={styles.foot}>
        <ButtonLink to="/trials/$id/plan" params={{ id: page.id }} shortcut="next">
          Plan the next pull
        </ButtonLink>
      </div>
    </Card>
  );
}
