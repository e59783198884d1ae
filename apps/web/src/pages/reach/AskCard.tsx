import type { ReachPage } from '@pullbook/views/reach';
import type { ReactNode } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import type { useSearch } from '../../reach/use-search.ts';
import type { ReachAsk } from '../../search.ts';
import { AskFields } from './AskFields.tsx';
import { missingOf } from './missing-of.ts';
import styles from './reach.module.css';

/** What is asked, and how far the search for it is. */
export function AskCard({
  ask,
  onChange,
  found,
  page,
  isCurrent,
  keep,
}: {
  ask: ReachAsk;
  onChange: (change: ReachAsk) => void;
  found: ReturnType<typeof useSearch>;
  page: ReachPage | null;
  /** What stands below is what was asked. */
  isCurrent: boolean;
  /** What can be done with the whole answer, once it is there. */
  keep: ReactNode;
}) {
  const isSearching = isCurrent && found.state === 'searching';
  const status = statusOf(ask, found, page, isCurrent);
  return (
    <Card title="What is asked">
      <AskFields ask={ask} onChange={onChange} />
      <div className={styles.search} data-empty={status === ''}>
        <p role="status" className={styles.status}>
          {status}
        </p>
        {isSearching && (
          <>
            <progress
              className={styles.progress}
              aria-label="How far the search is"
              value={found.progress?.share ?? 0}
            />
            <Button onPress={found.cancel}>Cancel</Button>
          </>
        )}
        {isCurrent && found.state === 'stopped' && <Button onPress={found.again}>Search again</Button>}
        {isCurrent && found.state === 'done' && keep}
      </div>
    </Card>
  );
}

function statusOf(
  ask: ReachAsk,
  found: ReturnType<typeof useSearch>,
  page: ReachPage | null,
  isCurrent: boolean,
): string {
  const missing = missingOf(ask);
  if (missing !== '') return missing;
  if (!isCurrent || page === null) return '';
  if (found.state === 'searching')
    return page.rungs.length === 0 ? 'Searching …' : `Searching … ${page.spoken}`;
  if (found.state === 'stopped') return `Stopped before the end. ${page.spoken}`;
  return page.spoken;
}
