import type { EnquiryAsked } from '@pullbook/core/reach';
import { useMutation } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { bookChanged } from '../../api/query-client.ts';
import { keepEnquiry, planRung } from '../../api/reach.ts';

/** What an answer is of: one that was kept, or a question whose answer can be. */
export type Answered = { enquiryId: string } | { combinationId: string; asked: EnquiryAsked };

/** Keeping an answer, and making a trial of one of its rungs; both lead to what they made. `null`: there is no answer yet. */
export function useReachActs(of: Answered | null) {
  const navigate = useNavigate();
  const keptId = async () => {
    if (of === null) throw new Error('There is no answer to keep yet.');
    return 'enquiryId' in of ? of.enquiryId : (await keepEnquiry(of)).id;
  };
  const keep = useMutation({
    mutationFn: keptId,
    onSuccess: async (id) => {
      await navigate({ to: '/reach/$id', params: { id } });
      await bookChanged();
    },
  });
  const plan = useMutation({
    mutationFn: async (rungId: string) => planRung(await keptId(), rungId),
    onSuccess: async ({ trial }) => {
      await navigate({ to: '/trials/$id/plan', params: { id: trial.id } });
      await bookChanged();
    },
    // The answer may be kept although its rung could not be planned.
    onError: bookChanged,
  });
  return { keep, plan };
}
