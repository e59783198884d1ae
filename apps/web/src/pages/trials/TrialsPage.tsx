import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { trialsQuestion } from '../../api/questions.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { FindField } from '../../parts/FindField.tsx';
import linked from '../../parts/linked-cards.module.css';
import { PageHead } from '../../parts/PageHead.tsx';
import { Pages } from '../../parts/Pages.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useFindText } from '../../parts/use-find-text.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { FirstSteps } from './FirstSteps.tsx';
import { TrialCardView } from './TrialCardView.tsx';
import styles from './trials.module.css';

/** The first page: answers first. */
export default function TrialsPage() {
  const search = useSearch({ from: '/' });
  const navigate = useNavigate({ from: '/' });
  const trials = useQuery(trialsQuestion(search, useViewChoices()));
  const { rows = [], total = 0, all = 0, page = 1, pages = 1 } = trials.data ?? {};
  const [text, onText] = useFindText(
    search.find,
    (find) => void navigate({ search: { find }, replace: true, resetScroll: false }),
  );

  return (
    <>
      <PageHead title="What you have found out">
        <ButtonLink to="/trials/new" look="main" shortcut="startTrial">
          Start a trial
        </ButtonLink>
        <ButtonLink to="/add" shortcut="addPulls">
          Add pulls
        </ButtonLink>
      </PageHead>
      <Trouble of={trials.error} />
      {trials.isPending && <Waiting />}
      {trials.data !== undefined && all === 0 && <FirstSteps />}
      {(trials.data === undefined || all > 0) && (
        <FindField what="trials" text={text} onText={onText} shown={total} all={all} />
      )}
      <ul className={linked.list}>
        {rows.map((card) => (
          <TrialCardView key={card.id} card={card} />
        ))}
      </ul>
      <Pages
        page={page}
        pages={pages}
        onPage={(to) => void navigate({ search: { ...search, page: to === 1 ? undefined : to } })}
      />
      <p className={styles.drop}>
        Drop logged files anywhere on this page. They are read here, on this computer; the originals are kept
        as they are.
      </p>
    </>
  );
}
