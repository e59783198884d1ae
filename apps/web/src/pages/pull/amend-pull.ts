import type { PullPage } from '@pullbook/views';
import { useMutation } from '@tanstack/react-query';
import { bookChanged, stampOnPage } from '../../api/query-client.ts';
import { sendJson } from '../../api/request.ts';
import type { WrittenAmendment } from './amendment-from.ts';

/** What may be mended of a pull: what was written down, and how it is read. Missing: stays. */
type PullAmendment = WrittenAmendment & { treatment?: PullPage['treatment'] };

export function useAmendPull(id: string) {
  return useMutation({
    mutationFn: (change: { amendment: PullAmendment; reason: string; stamp?: string | undefined }) =>
      sendJson<{ id: string }>('PATCH', `/pulls/${encodeURIComponent(id)}`, {
        ...change,
        stamp: change.stamp ?? stampOnPage('pull', id),
      }),
    onSuccess: bookChanged,
  });
}
