import { SHOWN_AS_CONDITIONS } from '@pullbook/core/rule';
import { findingGroups } from './findings.ts';
import type { FindingGroup } from './model.ts';
import type { TrialInView } from './trial-in-view.ts';

/** Rules that the page says in its own words: differences among the conditions, still climbing among what to mind. */
const SAID_BY_THE_PAGE: readonly string[] = [...SHOWN_AS_CONDITIONS, 'V29'];

/** What the rules say of a trial and its pulls, each rule once. */
export function trialFindings({ answer, show }: TrialInView): FindingGroup[] {
  const names = new Map([...answer.pulls.values()].map(({ id, name }) => [`pull ${id}`, name] as const));
  const findings = answer.findings.filter(({ ruleId }) => !SAID_BY_THE_PAGE.includes(ruleId));
  return findingGroups(findings, names, show.options);
}
