import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { pullsQuestion } from '../../api/questions.ts';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Chips } from '../../parts/Chips.tsx';
import { FindField, holdsAllWords } from '../../parts/FindField.tsx';
import styles from '../../parts/list.module.css';
import { PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';

/** Every pull of the book; tick some to compare them. */
export default function PullsPage() {
  const pulls = useQuery(pullsQuestion(useViewChoices()));
  const [sought, setSought] = useState('');
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const all = pulls.data ?? [];
  const shown = all.filter((pull) =>
    holdsAllWords(
      [
        pull.name,
        pull.combinationName,
        pull.recordedAt,
        pull.cell,
        pull.standard,
        ...pull.chips.map((chip) => chip.text),
      ],
      sought,
    ),
  );
  return (
    <>
      <PageHead title="Pulls">
        <ButtonLink to="/add" look="main" shortcut="addPulls">
          Add pulls
        </ButtonLink>
      </PageHead>
      <Trouble of={pulls.error} />
      {pulls.isPending && <Waiting />}
      {pulls.data !== undefined && all.length === 0 && (
        <p>None yet. Drop logged files anywhere on this page; they are read here, on this computer.</p>
      )}
      {(pulls.data === undefined || all.length > 0) && (
        <FindField what="pulls" text={sought} onText={setSought} shown={shown.length} all={all.length} />
      )}
      {shown.length > 0 && (
        <ul className={`${styles.list} ${styles.pulls}`}>
          {shown.map((pull) => (
            <li key={pull.id}>
              <label className={styles.tick}>
                <input
                  type="checkbox"
                  aria-label={`Compare ${pull.name}`}
                  checked={ticked.includes(pull.id)}
                  onChange={(event) =>
                    setTicked(
                      event.target.checked ? [...ticked, pull.id] : ticked.filter((id) => id !== pull.id),
                    )
                  }
                />
              </label>
              <div>
                <Link className={styles.name} to="/pulls/$id" params={{ id: pull.id }}>
                  {pull.name}
                </Link>
                <p className={styles.soft}>{pull.combinationName}</p>
                <Chips chips={pull.chips} />
              </div>
              <div>
                <p className={styles.figure}>{pull.peakPower}</p>
                <p className={styles.figure}>{pull.peakTorque}</p>
              </div>
              <div className={styles.soft}>
                <p>{pull.recordedAt}</p>
                <p>{[pull.cell, pull.standard].filter((text) => text !== '').join(' · ')}</p>
              </div>
            </li>
          ))}
        </ul>
      )}
      {ticked.length > 0 && (
        <div className={styles.selected}>
          <span>{ticked.length === 1 ? '1 pull ticked' : `${ticked.length} pulls ticked`}</span>
          <ButtonLink look="main" to="/trials/new" search={{ pulls: ticked.join(',') }}>
            Compare them
          </ButtonLink>
          <Button look="quiet" onPress={() => setTicked([])}>
            Untick all
          </Button>
        </div>
      )}
    </>
  );
}
