import type { TrialPage } from '@pullbook/views';
import { Link } from '@tanstack/react-router';
import { Card } from '../../parts/Card.tsx';
import styles from './why.module.css';

type Explained = TrialPage['why'][number];

/** The likeliest reason with what speaks for it, what the data cannot exclude, what would settle it; and the way to the match. */
export function Why({ of, matchOf }: { of: TrialPage['why']; matchOf: string | null }) {
  if (of.length === 0) return null;
  return (
    <Card title="Why">
      {of.map((one) => (
        <div key={one.key} className={styles.explained}>
          {one.name !== '' && <h3>{one.name}</h3>}
          {one.likeliest === null ? (
            <p className={styles.silent}>{one.sentence}</p>
          ) : (
            <>
              <p className={styles.likeliest}>
                <span className={styles.lead}>Likeliest: </span>
                {one.sentence}
              </p>
              <Evidence of={one.evidence} />
              <NotMeasured of={one.notMeasured} />
            </>
          )}
          {one.notExcluded.length > 0 && <NotExcluded of={one.notExcluded} />}
          {one.wouldSettle !== '' && <p className={styles.settles}>{one.wouldSettle}</p>}
        </div>
      ))}
      {matchOf !== null && (
        <p className={styles.match}>
          <Link to="/trials/$id/match" params={{ id: matchOf }}>
            The match: where it runs on the compressor’s map, and what another pulley would do
          </Link>
        </p>
      )}
    </Card>
  );
}

function NotExcluded({ of }: { of: Explained['notExcluded'] }) {
  return (
    <>
      <h3>Not excluded</h3>
      <ul className={styles.others}>
        {of.map(({ id, text, evidence, notMeasured }) => (
          <li key={id}>
            <details>
              <summary>{text}</summary>
              <Evidence of={evidence} />
              <NotMeasured of={notMeasured} />
            </details>
          </li>
        ))}
      </ul>
    </>
  );
}

function Evidence({ of }: { of: Explained['evidence'] }) {
  return (
    <ul className={styles.evidence}>
      {of.map(({ about, text, speaks }) => (
        <li key={about}>
          <span className={styles.speaks}>
            <span aria-hidden="true">{speaks === 'for' ? '+' : '−'}</span>
            <span className={styles.spoken}>{speaks === 'for' ? 'For:' : 'Against:'}</span>
          </span>
          <span>
            {text}
            {speaks === 'against' && <span className={styles.against}> Speaks against it.</span>}
          </span>
        </li>
      ))}
    </ul>
  );
}

function NotMeasured({ of }: { of: string[] }) {
  return of.length === 0 ? null : <p className={styles.notMeasured}>Not measured: {of.join(', ')}.</p>;
}
