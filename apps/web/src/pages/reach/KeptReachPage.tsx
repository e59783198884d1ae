import { type KeptEnquiry, reachPage } from '@pullbook/views/reach';
import { useQuery } from '@tanstack/react-query';
import { useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { useMemo } from 'react';
import { enquiryQuestion } from '../../api/reach.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { useTabName } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import type { KeptReachSearch } from '../../search.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { AnswerCard } from './AnswerCard.tsx';
import { askAgain } from './ask-again.ts';
import { ReachHead } from './ReachHead.tsx';
import { ReachView } from './ReachView.tsx';
import { RungActs } from './RungActs.tsx';
import styles from './reach.module.css';
import { useReachActs } from './use-reach-acts.ts';

/** An answer as it was given, with what is no longer so and what became of its rungs. */
export default function KeptReachPage() {
  const { id } = useParams({ from: '/reach/$id' });
  const search = useSearch({ from: '/reach/$id' });
  const kept = useQuery(enquiryQuestion(id));
  if (kept.data === undefined) return kept.isPending ? <Waiting /> : <Trouble of={kept.error} />;
  return <KeptReach key={id} kept={kept.data} search={search} />;
}

function KeptReach({ kept, search }: { kept: KeptEnquiry; search: KeptReachSearch }) {
  const { units, decimalMark } = useViewChoices();
  const navigate = useNavigate({ from: '/reach/$id' });
  const { id, combinationId, asked } = kept.enquiry;
  const rungId = search.rung ?? null;
  const page = useMemo(
    () => reachPage({ kept, rungId }, { units, decimalMark }),
    [kept, rungId, units, decimalMark],
  );
  const { plan } = useReachActs({ enquiryId: id });
  useTabName(page.title);
  return (
    <article>
      <ReachHead id={null} name={page.title} page={page}>
        <div className={styles.ways}>
          <ButtonLink to="/combinations/$id/reach" params={{ id: combinationId }} search={askAgain(asked)}>
            Ask it again
          </ButtonLink>
          <ButtonLink to="/combinations/$id" params={{ id: combinationId }}>
            Its combination
          </ButtonLink>
          <ButtonLink to="/reach">All that was asked</ButtonLink>
        </div>
      </ReachHead>
      <ReachView
        page={page}
        search={search}
        onLook={(at) =>
          void navigate({ search: (before) => ({ ...before, ...at }), replace: true, resetScroll: false })
        }
        acts={page.chosen !== null && <RungActs chosen={page.chosen} plan={plan} />}
        more={<AnswerCard kept={kept} page={page} />}
      />
    </article>
  );
}
