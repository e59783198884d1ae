import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { combinationsQuestion } from '../../api/questions.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { Chips } from '../../parts/Chips.tsx';
import { FindField, holdsAllWords } from '../../parts/FindField.tsx';
import styles from '../../parts/list.module.css';
import { PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';

/** The hardware as built, one readable sheet each. */
export default function CombinationsPage() {
  const combinations = useQuery(combinationsQuestion());
  const [sought, setSought] = useState('');
  const all = combinations.data ?? [];
  const shown = all.filter((one) =>
    holdsAllWords([one.name, one.engineName, ...one.chips.map((chip) => chip.text)], sought),
  );
  return (
    <>
      <PageHead title="Combinations">
        <ButtonLink to="/combinations/new" look="main">
          A new combination
        </ButtonLink>
      </PageHead>
      <Trouble of={combinations.error} />
      {combinations.isPending && <Waiting />}
      {combinations.data !== undefined && all.length === 0 && (
        <p>None yet. A combination is the hardware as built for a pull: write what is on the engine, once.</p>
      )}
      {(combinations.data === undefined || all.length > 0) && (
        <FindField
          what="combinations"
          text={sought}
          onText={setSought}
          shown={shown.length}
          all={all.length}
        />
      )}
      {shown.length > 0 && (
        <ul className={`${styles.list} ${styles.combinations}`}>
          {shown.map((one) => (
            <li key={one.id}>
              <div>
                <Link className={styles.name} to="/combinations/$id" params={{ id: one.id }}>
                  {one.name}
                </Link>
                <p className={styles.soft}>
                  {one.engineName}
                  {one.revision > 1 && ` · revision ${one.revision}`} ·{' '}
                  {one.pulls === 1 ? '1 pull' : `${one.pulls} pulls`}
                </p>
              </div>
              <Chips chips={one.chips} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
