import type { CorrectionId } from '@pullbook/core/air';
import type { RunningOrder } from '@pullbook/core/trial';
import { useMutation } from '@tanstack/react-query';
import { bookChanged, stampOnPage } from '../../api/query-client.ts';
import { sendJson } from '../../api/request.ts';

/** What may be changed of a trial; the reason goes into the log. */
export interface TrialChange {
  question?: string;
  kind?: 'comparison' | 'survey';
  correction?: CorrectionId;
  averagesWindowRpm?: [number, number] | null;
  remark?: string;
  /** All of them, the baseline first. Pulls of one that is no longer there leave the trial. */
  combinations?: { combinationId: string; shortName: string }[];
  /** By the key of the combination; `null`: told by the parts that changed. */
  takenApart?: Record<string, boolean | null>;
  /** Pulls that join or change their role; the others stay as they are. */
  pulls?: { pullId: string; key?: string; role: 'counted' | 'rejected' | 'warm-up'; reason: string | null }[];
  /** How it is told step by step; `null`: as worked out. */
  runningOrder?: RunningOrder | null;
  reason: string;
  /** What was looked at when this was written; missing: the page as it stands. */
  stamp?: string | undefined;
}

export function useChangeTrial(id: string) {
  return useMutation({
    mutationFn: (change: TrialChange) =>
      sendJson<{ id: string }>('PATCH', `/trials/${encodeURIComponent(id)}`, {
        ...change,
        stamp: change.stamp ?? stampOnPage('trial', id),
      }),
    onSuccess: bookChanged,
  });
}
