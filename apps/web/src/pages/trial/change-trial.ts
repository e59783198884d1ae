import type { CorrectionId } from '@pullbook/core/air';
import { useMutation } from '@tanstack/react-query';
import { bookChanged } from '../../api/query-client.ts';
import { sendJson } from '../../api/request.ts';

/** What may be changed of a trial; the reason goes into the log. */
export interface TrialChange {
  question?: string;
  correction?: CorrectionId;
  averagesWindowRpm?: [number, number] | null;
  remark?: string;
  /** All of them, the baseline first. Pulls of one that is no longer there leave the trial. */
  combinations?: { combinationId: string; shortName: string }[];
  /** Pulls that join or change their role; the others stay as they are. */
  pulls?: { pullId: string; key?: string; role: 'counted' | 'rejected' | 'warm-up'; reason: string | null }[];
  reason: string;
}

export function useChangeTrial(id: string) {
  return useMutation({
    mutationFn: (change: TrialChange) =>
      sendJson<{ id: string }>('PATCH', `/trials/${encodeURIComponent(id)}`, change),
    onSuccess: bookChanged,
  });
}
