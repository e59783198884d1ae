/** Rules with their thresholds, and silencing one for a thing. */
import type { RulesReport, SilencedKind } from '@pullbook/workshop';
import { queryOptions, useMutation } from '@tanstack/react-query';
import type { ViewChoices } from '../view/view-choices.ts';
import { bookChanged } from './query-client.ts';
import { figuresQuery } from './questions.ts';
import { getJson, sendJson } from './request.ts';

export const rulesQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['rules', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<RulesReport>('/rules', figuresQuery(view), signal),
  });

/** `subject`: `pull <id>`, as a finding has it. */
export interface RuleOfSubject {
  ruleId: string;
  subject: string;
}

const bodyOf = (subject: string) => {
  const [kind = '', ...id] = subject.split(' ');
  return { kind: kind as SilencedKind, id: id.join(' ') };
};

export function useSilence({ ruleId, subject }: RuleOfSubject) {
  return useMutation({
    mutationFn: ({ reason }: { reason: string }) =>
      sendJson<unknown>('POST', `/rules/${ruleId}/silence`, { ...bodyOf(subject), reason }),
    onSuccess: bookChanged,
  });
}

export function useLetSpeak({ ruleId, subject }: RuleOfSubject) {
  return useMutation({
    mutationFn: () => sendJson<unknown>('POST', `/rules/${ruleId}/speak`, bodyOf(subject)),
    onSuccess: bookChanged,
  });
}

/** `value` with its unit; `null`: as the catalogue has it. */
export function useSetThreshold() {
  return useMutation({
    mutationFn: ({ id, value }: { id: string; value: string | null }) =>
      sendJson<unknown>('PATCH', `/rules/thresholds/${encodeURIComponent(id)}`, { value }),
    onSuccess: bookChanged,
  });
}
