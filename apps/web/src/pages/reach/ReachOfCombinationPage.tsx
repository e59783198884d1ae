import { type ReachBundle, reachPage, revivedReach } from '@pullbook/views/reach';
import { useQuery } from '@tanstack/react-query';
import { useSearch as useAddress, useParams } from '@tanstack/react-router';
import { useMemo } from 'react';
import { combinationQuestion } from '../../api/questions.ts';
import { reachQuestion } from '../../api/reach.ts';
import { Button } from '../../parts/Button.tsx';
import { useTabName } from '../../parts/PageHead.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { useSearch } from '../../reach/use-search.ts';
import type { ReachSearch } from '../../search.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { AskCard } from './AskCard.tsx';
import { missingOf } from './missing-of.ts';
import { ReachHead } from './ReachHead.tsx';
import { ReachView } from './ReachView.tsx';
import { RungActs } from './RungActs.tsx';
import styles from './reach.module.css';
import { useAsk } from './use-ask.ts';
import { useReachActs } from './use-reach-acts.ts';

/** How one combination makes a power: asked, searched in the page, and the ladder that comes of it. */
export default function ReachOfCombinationPage() {
  const { id } = useParams({ from: '/combinations/$id/reach' });
  const search = useAddress({ from: '/combinations/$id/reach' });
  return <ReachOfCombination key={id} id={id} search={search} />;
}

function ReachOfCombination({ id, search }: { id: string; search: ReachSearch }) {
  const view = useViewChoices();
  const { typed, settled, isTyping, change, look } = useAsk(search);
  const isWhole = missingOf(settled) === '';
  const asked = useQuery({ ...reachQuestion(id, settled), enabled: isWhole });
  const name = useQuery(combinationQuestion(id, view)).data?.name ?? '';
  // What stood before stays to be read while another question is typed, but is not searched any further.
  const bundle = useMemo(
    () => (asked.data === undefined || !isWhole ? null : revivedReach(asked.data)),
    [asked.data, isWhole],
  );
  const isCurrent = !isTyping && !asked.isPlaceholderData && asked.error === null;
  const found = useSearch(bundle !== null && isCurrent ? bundle.input : null);
  const page = usePage(bundle, found, search.rung);
  const { keep, plan } = useReachActs(bundle === null ? null : { combinationId: id, asked: bundle.asked });
  useTabName(settled.power === undefined ? `Reach: ${name}` : `${settled.power}: ${name}`);
  const isShown = page !== null && asked.error === null;
  return (
    <article>
      <ReachHead id={id} name={bundle?.name ?? name} page={isShown ? page : null} />
      <AskCard
        ask={typed}
        onChange={change}
        found={found}
        page={page}
        isCurrent={isCurrent}
        keep={
          <Button isDisabled={keep.isPending} onPress={() => keep.mutate()}>
            {keep.isPending ? 'Keeping …' : 'Keep this answer'}
          </Button>
        }
      />
      <div className={styles.trouble}>
        <Trouble of={asked.error ?? found.trouble} />
        <Trouble of={keep.error} />
      </div>
      {isShown && (
        <div className={isCurrent ? undefined : styles.old}>
          <ReachView
            page={page}
            search={search}
            onLook={look}
            acts={
              page.chosen !== null && (
                <RungActs chosen={page.chosen} plan={isCurrent && found.state === 'done' ? plan : null} />
              )
            }
          />
        </div>
      )}
    </article>
  );
}

function usePage(bundle: ReachBundle | null, found: ReturnType<typeof useSearch>, rung: string | undefined) {
  const { units, decimalMark } = useViewChoices();
  const { answer, progress } = found;
  return useMemo(
    () =>
      bundle === null
        ? null
        : reachPage({ bundle, answer, progress, rungId: rung ?? null }, { units, decimalMark }),
    [bundle, answer, progress, rung, units, decimalMark],
  );
}
