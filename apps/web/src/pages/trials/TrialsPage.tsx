import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trialsQuestion } from '../../api/questions.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { FindField, holdsAllWords } from '../../parts/FindField.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { FirstSteps } from './FirstSteps.tsx';
import { TrialCardView } from './TrialCardView.tsx';
import styles from './trials.module.css';

/** The first page: answers first. */
export default function TrialsPage() {
  const view = useViewChoices();
  const trials = useQuery(trialsQuestion(view));
  const [sought, setSought] = useState('');
  const all = trials.data ?? [];
  const shown = all.filter((card) =>
    holdsAllWords([card.question, ...card.sentence.map((part) => part.text), card.facts], sought),
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
      {trials.data !== undefined && all.length === 0 && <FirstSteps />}
      {(trials.data === undefined || all.length > 0) && (
        <FindField what="trials" text={sought} onText={setSought} shown={shown.length} all={all.length} />
      )}
      <ul className={styles.list}>
        {shown.map((card) => (
          <TrialCardView key={card.id} card={card} />
        ))}
      </ul>
      <p className={styles.drop}>
        Drop logged files anywhere on this page. They are read here, on this computer; the originals are kept
        as they are.
      </p>
    </>
  );
}
