import { useInfiniteQuery } from '@tanstack/react-query';
import { Link, useSearch } from '@tanstack/react-router';
import type { HistoryPage as Page } from '../../api/edge.ts';
import { figuresQuery } from '../../api/questions.ts';
import { getJson } from '../../api/request.ts';
import { useUndo } from '../../frame/LastAct.tsx';
import { Button } from '../../parts/Button.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { HistoryStepView } from './HistoryStepView.tsx';
import styles from './history.module.css';

/** All that was done to the book and why, the last first; each can be undone. */
export default function HistoryPage() {
  const { of } = useSearch({ from: '/history' });
  const view = useViewChoices();
  const log = useInfiniteQuery({
    queryKey: ['history', 'pages', of, figuresQuery(view)],
    queryFn: ({ pageParam, signal }) =>
      getJson<Page>('/history', { ...figuresQuery(view), subject: of, before: pageParam }, signal),
    initialPageParam: undefined as number | undefined,
    getNextPageParam: ({ next }) => next ?? undefined,
  });
  const undo = useUndo();
  const steps = log.data?.pages.flatMap((page) => page.steps) ?? [];
  return (
    <>
      <PageHead title={of === undefined ? 'History' : 'History of one thing'} />
      <p className={styles.intro}>
        The last act first, in the order in which they were written, whatever a clock said; times are this
        machine’s. An undo is an act of its own: nothing measured is ever deleted, and what was undone can be
        had back.
        {of !== undefined && (
          <>
            {' '}
            <Link to="/history">Show the whole history</Link>.
          </>
        )}
      </p>
      <Trouble of={log.error ?? undo.error} />
      {log.isPending && <Waiting />}
      {steps.length > 0 && (
        <ol className={styles.steps}>
          {steps.map((step, place) => (
            <HistoryStepView
              key={step.uid}
              step={step}
              isNewest={place === 0}
              onUndo={() => undo.mutate(step.uid)}
              isUndoing={undo.isPending}
            />
          ))}
        </ol>
      )}
      {log.hasNextPage && (
        <div className={styles.more}>
          <Button onPress={() => void log.fetchNextPage()} isDisabled={log.isFetchingNextPage}>
            Show what came before
          </Button>
        </div>
      )}
    </>
  );
}
