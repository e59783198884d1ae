import { useQuery } from '@tanstack/react-query';
import { rescueQuestion, usePutRescueAway } from '../api/safety.ts';
import { Button } from '../parts/Button.tsx';
import styles from './last-act.module.css';
import own from './rescue-notice.module.css';

/** Says on every page what a rescue of the damaged book kept and lost, until somebody puts it away. */
export function RescueNotice() {
  const report = useQuery(rescueQuestion()).data?.report ?? null;
  const putAway = usePutRescueAway();
  if (report === null) return null;
  const { kept, madeAgain, lost, poorer, damagedFolder } = report;
  return (
    <aside className={styles.clock} aria-label="Rescue of the book">
      <div>
        <p>
          The book was damaged and was rescued: {kept.pulls} pulls and {kept.trials} trials are here
          {madeAgain.length > 0 ? `, ${madeAgain.length} curves made again from their files` : ''}. Lost:{' '}
          {lost.length === 0 ? 'nothing' : lost.length}.
        </p>
        {lost.length + poorer.length > 0 && (
          <details>
            <summary className={own.summary}>What is lost, and what is poorer</summary>
            {/* Scrolls, so the keys must reach it. */}
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long list that scrolls */}
            <ul className={own.list} tabIndex={0} aria-label="What is lost, and what is poorer">
              {[...lost, ...poorer].map(({ kind, id, name, what }) => (
                <li key={`${kind} ${id} ${what}`}>
                  {kind} {name === '' ? id.slice(0, 8) : `“${name}”`}: {what}
                </li>
              ))}
            </ul>
          </details>
        )}
        <p>The damaged files are as they were in “{damagedFolder}” in the folder of the book.</p>
      </div>
      <Button onPress={() => putAway.mutate()}>I have read it</Button>
    </aside>
  );
}
