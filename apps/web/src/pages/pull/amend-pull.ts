import type { PullPage } from '@pullbook/views';
import { useMutation } from '@tanstack/react-query';
import type { ImportDetails } from '../../api/edge.ts';
import { bookChanged } from '../../api/query-client.ts';
import { sendJson } from '../../api/request.ts';

/** What may be mended of a pull: what was written down, and how it is read. Missing: stays. */
type PullAmendment = Partial<Omit<ImportDetails, 'mapping'>> & { treatment?: PullPage['treatment'] };

export function useAmendPull(id: string) {
  return useMutation({
    mutationFn: (change: { amendment: PullAmendment; reason: string }) =>
      sendJson<{ id: string }>('PATCH', `/pulls/${encodeURIComponent(id)}`, change),
    onSuccess: bookChanged,
  });
}
