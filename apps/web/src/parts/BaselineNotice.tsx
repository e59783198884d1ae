import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { baselinesAtRiskQuestion } from '../api/plan.ts';
import { useViewChoices } from '../view/view-choices.ts';
import styles from './baseline-notice.module.css';

/**
 * Before the baseline of a trial leaves the brake: what would be lost. It stands in nobody's way. `fitted`: only where this
 * combination is on the brake; `next`: nothing is said where the next pull is of the same one.
 */
export function BaselineNotice({ fitted, next }: { fitted?: string; next?: string }) {
  const risks = useQuery(baselinesAtRiskQuestion(fitted, useViewChoices()));
  const said = (risks.data ?? []).filter(({ combinationId }) => combinationId !== next);
  return said.map(({ trialId, question, text }) => (
    <p key={trialId} className={styles.notice} role="status">
      {text}{' '}
      <Link to="/trials/$id/plan" params={{ id: trialId }}>
        {question}
      </Link>
    </p>
  ));
}
