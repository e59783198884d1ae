import { plainText } from '@pullbook/views';
import { Link } from '@tanstack/react-router';
import type { PublishPage } from '../../api/publish.ts';
import { Card } from '../../parts/Card.tsx';
import { dayHere } from '../../view/moment-here.ts';
import { SaidAlikeView } from '../publications/SaidAlikeView.tsx';
import { saidAlike } from '../publications/said-alike.ts';
import styles from './publish.module.css';

/** As many of those that hold are shown here; all of them stand among the publications. */
const NEWEST = 4;

/** What was published of this trial before, and where it appeared. */
export function Published({ page: { publications, sentence } }: { page: PublishPage }) {
  const shown = saidAlike(publications, dayHere).filter(
    ({ first }, place) => place < NEWEST || first.stale.length > 0,
  );
  return (
    <Card title="Published before" beside={<Link to="/publications">All publications</Link>}>
      {publications.length === 0 ? (
        <p className={styles.soft}>
          Nothing of this trial yet. What is published here is noted with its figures, so that you hear of it
          when one of them is no longer so.
        </p>
      ) : (
        <ol className={styles.parts}>
          {shown.map((group) => (
            <li key={group.first.id}>
              <SaidAlikeView group={group} saidNow={plainText(sentence)} />
            </li>
          ))}
        </ol>
      )}
    </Card>
  );
}
