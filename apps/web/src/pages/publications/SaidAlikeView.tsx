import { dayHere } from '../../view/moment-here.ts';
import { PublicationView } from './PublicationView.tsx';
import styles from './publications.module.css';
import type { SaidAlike } from './said-alike.ts';

/** A publication, and behind a press those of its day that say the same, each with its files and where it appeared. */
export function SaidAlikeView({
  group: { first, others },
  withQuestion = false,
  saidNow = '',
}: {
  group: SaidAlike;
  withQuestion?: boolean;
  saidNow?: string;
}) {
  return (
    <>
      <PublicationView publication={first} withQuestion={withQuestion} saidNow={saidNow} />
      {others.length > 0 && (
        <details className={styles.others}>
          <summary className={styles.summary}>
            {others.length === 1 ? 'One more' : `${others.length} more`} of {dayHere(first.at)} that{' '}
            {others.length === 1 ? 'says' : 'say'} the same
          </summary>
          <ol>
            {others.map((one) => (
              <li key={one.id}>
                <PublicationView publication={one} isSaidAbove />
              </li>
            ))}
          </ol>
        </details>
      )}
    </>
  );
}
