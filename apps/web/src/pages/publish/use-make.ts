import { useEffect, useEffectEvent, useState } from 'react';
import {
  type LeavingLook,
  type PublishAsk,
  type PublishJob,
  publishedFileAddress,
  publishingOf,
  startPublishing,
  stopPublishing,
} from '../../api/publish.ts';
import { bookChanged } from '../../api/query-client.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { follow } from './followed-jobs.ts';

/** Where a making is. */
export type MakeState =
  | { kind: 'still' }
  | { kind: 'running'; job: PublishJob | null }
  | { kind: 'ended'; job: PublishJob }
  | { kind: 'failed'; error: Error };

/** How often it is asked how far it is, ms: often enough to be seen moving. */
const ASK_EVERY_MS = 300;

/** Has something made by the server, follows it, and has the browser fetch the file at the end. */
export function useMake(id: string, look: LeavingLook) {
  const view = useViewChoices();
  const [state, setState] = useState<MakeState>({ kind: 'still' });
  const running = state.kind === 'running' ? state.job : null;

  const ownJob = state.kind === 'running' || state.kind === 'ended' ? (state.job?.id ?? null) : null;

  const take = useEffectEvent((job: PublishJob) => {
    if (job.state === 'making') {
      setState({ kind: 'running', job });
      return;
    }
    setState({ kind: 'ended', job });
    if (job.file !== null) fetchFile(publishedFileAddress(job.id));
    void bookChanged();
  });

  useEffect(() => (ownJob === null ? undefined : follow(ownJob)), [ownJob]);
  useEffect(() => {
    if (running === null) return;
    const timer = setTimeout(() => {
      publishingOf(running.id).then(take, (error: Error) => setState({ kind: 'failed', error }));
    }, ASK_EVERY_MS);
    return () => clearTimeout(timer);
  }, [running]);

  return {
    state,
    make: (ask: PublishAsk) => {
      setState({ kind: 'running', job: null });
      startPublishing(id, ask, look, view).then(
        (job) => setState({ kind: 'running', job }),
        (error: Error) => setState({ kind: 'failed', error }),
      );
    },
    cancel: () => {
      if (running !== null)
        stopPublishing(running.id).catch((error: Error) => setState({ kind: 'failed', error }));
    },
  };
}

/** The browser keeps it as it comes: it never stands in memory whole. */
function fetchFile(address: string): void {
  const link = document.createElement('a');
  link.href = address;
  link.download = '';
  link.click();
}
