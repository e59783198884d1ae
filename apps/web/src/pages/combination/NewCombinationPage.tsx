import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { combinationQuestion } from '../../api/questions.ts';
import { BaselineNotice } from '../../parts/BaselineNotice.tsx';
import { Panel } from '../../parts/Card.tsx';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { blankSheet, renamedSheet } from './blank-sheet.ts';
import { CombinationForm } from './CombinationForm.tsx';
import styles from './combination.module.css';

/** A new combination, blank or "the same as this one, but …". */
export default function NewCombinationPage() {
  const { from } = useSearch({ from: '/combinations/new' });
  const view = useViewChoices();
  const navigate = useNavigate();
  const origin = useQuery({ ...combinationQuestion(from ?? '', view), enabled: from !== undefined });
  if (from !== undefined && origin.data === undefined) {
    return origin.isPending ? <Waiting /> : <Trouble of={origin.error} />;
  }
  const madeFrom = origin.data;
  return (
    <Column narrow>
      <PageHead
        title={madeFrom === undefined ? 'A new combination' : `The same as “${madeFrom.name}”, but …`}
      />
      {from !== undefined && <BaselineNotice fitted={from} />}
      <Panel>
        <div className={styles.form}>
          {madeFrom !== undefined && (
            <p>Change what was changed on the engine, and give it a name that says so. The rest stays.</p>
          )}
          <CombinationForm
            sheetText={
              madeFrom === undefined
                ? blankSheet('')
                : renamedSheet(madeFrom.sheetText, `${madeFrom.name}, but`)
            }
            engineName={madeFrom?.engineName ?? ''}
            madeFrom={madeFrom ?? null}
            onMade={({ id }) => void navigate({ to: '/combinations/$id', params: { id } })}
          />
        </div>
      </Panel>
    </Column>
  );
}
