import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { pullsQuestion } from '../../api/questions.ts';
import { useKey } from '../../keys/use-key.ts';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { FindField } from '../../parts/FindField.tsx';
import listStyles from '../../parts/list.module.css';
import { PageHead } from '../../parts/PageHead.tsx';
import { Pages } from '../../parts/Pages.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useFindText } from '../../parts/use-find-text.ts';
import type { PullsSearch } from '../../search.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { PullFilters } from './PullFilters.tsx';
import { PullRows } from './PullRows.tsx';
import styles from './pulls.module.css';

/** The pulls of the book, found and narrowed; tick some to compare them. What was asked for stands in the address. */
export default function PullsPage() {
  const search = useSearch({ from: '/pulls' });
  const navigate = useNavigate({ from: '/pulls' });
  const pulls = useQuery(pullsQuestion(search, useViewChoices()));
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const { rows = [], total = 0, all = 0, page = 1, pages = 1, cells = [] } = pulls.data ?? {};
  // Another question starts at its first page.
  const ask = (change: PullsSearch) =>
    void navigate({ search: { ...search, page: undefined, ...change }, replace: true, resetScroll: false });
  useKey('next', () => void navigate({ to: '/add', search: { like: ticked[0] ?? 'last' } }));
  const [text, onText] = useFindText(search.find, (find) => ask({ find }));
  return (
    <>
      <PageHead title="Pulls">
        {all > 0 && (
          <ButtonLink to="/add" search={{ like: ticked[0] ?? 'last' }} shortcut="next">
            {ticked.length > 0 ? 'Add one like the ticked' : 'Add one like the last'}
          </ButtonLink>
        )}
        <ButtonLink to="/add" look="main" shortcut="addPulls">
          Add pulls
        </ButtonLink>
      </PageHead>
      <Trouble of={pulls.error} />
      {pulls.isPending && <Waiting />}
      {pulls.data !== undefined && all === 0 && (
        <p>None yet. Drop logged files anywhere on this page; they are read here, on this computer.</p>
      )}
      {(pulls.data === undefined || all > 0) && (
        <PullFilters
          find={<FindField what="pulls" text={text} onText={onText} shown={total} all={all} />}
          search={search}
          cells={cells}
          onAsk={ask}
        />
      )}
      {pulls.data?.stillReading && (
        <p className={styles.reading} role="status">
          Some pulls are still being read for this list: until then they are found by name only.
        </p>
      )}
      {all > 0 && rows.length === 0 && <p>No pull is like that. Take a word or a filter away.</p>}
      {rows.length > 0 && (
        <PullRows
          rows={rows}
          ticked={ticked}
          onTick={(id, isTicked) =>
            setTicked(isTicked ? [...ticked, id] : ticked.filter((other) => other !== id))
          }
        />
      )}
      <Pages
        page={page}
        pages={pages}
        onPage={(to) => void navigate({ search: { ...search, page: to === 1 ? undefined : to } })}
      />
      {ticked.length > 0 && (
        <div className={listStyles.selected}>
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
