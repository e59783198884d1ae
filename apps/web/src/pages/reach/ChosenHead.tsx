import type { ChosenRung } from '@pullbook/views/reach';
import { Link } from '@tanstack/react-router';
import type { Ref } from 'react';
import { Card } from '../../parts/Card.tsx';
import { ChipOf } from '../../parts/Chips.tsx';
import { SourceLine } from './ReachLinks.tsx';
import styles from './reach.module.css';

/** The chosen way in words: each change, what it costs, what it rests on; and the trial that it became. */
export function ChosenHead({ chosen, headRef }: { chosen: ChosenRung; headRef: Ref<HTMLHeadingElement> }) {
  const { rung, became } = chosen;
  const title = rung.number === '' ? rung.title : `${rung.number}. ${rung.title}`;
  return (
    <Card title="The chosen way">
      <h3 className={styles.chosenTitle} ref={headRef} tabIndex={-1}>
        {title}
      </h3>
      <p className={styles.plain}>
        <strong>{rung.reached}</strong>
        {rung.band !== '' && `, ${rung.band}`}
        {rung.chance !== '' && ` · ${rung.chance}`}
        {rung.state !== '' && ` · ${rung.state}`}
      </p>
      {rung.changes.length > 0 && (
        <ul className={styles.changes}>
          {rung.changes.map(({ part, text, cost, ground, from }) => (
            <li key={`${part} ${text}`}>
              <span className={styles.title}>{text}</span>
              <span className={styles.chips}>
                <ChipOf chip={{ text: ground, tone: 'quiet' }} />
                <ChipOf chip={{ text: cost, tone: 'quiet' }} />
              </span>
              <SourceLine from={from} />
            </li>
          ))}
        </ul>
      )}
      {became !== null && (
        <p className={styles.plain}>
          Became the trial{' '}
          <Link to="/trials/$id/plan" params={{ id: became.trialId }}>
            with its plan
          </Link>{' '}
          and a{' '}
          <Link to="/combinations/$id" params={{ id: became.combinationId }}>
            combination of its own
          </Link>
          .
        </p>
      )}
    </Card>
  );
}
