import type { Finding, Silenced } from './model.ts';

const LEVELS: readonly Finding['level'][] = ['alarm', 'caution', 'note'];

/**
 * Findings with a person's word on them: a silenced one stays, with its reason and day, after those that speak. Those that
 * speak come as strongly as they are said, then by rule.
 */
export function withSilenced(findings: readonly Finding[], silenced: readonly Silenced[]): Finding[] {
  const words = new Map(silenced.map((one) => [`${one.ruleId} ${one.subject}`, one]));
  return findings
    .map((finding) => {
      const word = words.get(`${finding.ruleId} ${finding.subject}`);
      return { ...finding, silenced: word === undefined ? null : { reason: word.reason, at: word.at } };
    })
    .toSorted(
      (one, other) =>
        Number(one.silenced !== null) - Number(other.silenced !== null) ||
        LEVELS.indexOf(one.level) - LEVELS.indexOf(other.level) ||
        one.ruleId.localeCompare(other.ruleId, 'en'),
    );
}
