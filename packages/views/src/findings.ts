import { writeSaid } from '@pullbook/core/quantity';
import { type Finding, ruleNamed } from '@pullbook/core/rule';
import { momentText } from './date.ts';
import type { FindingGroup, ViewOptions } from './model.ts';

const LEVELS: readonly Finding['level'][] = ['alarm', 'caution', 'note'];

/**
 * Findings as a page shows them: each rule once with its sentences, the strongest first; a rule whose every sentence was silenced
 * stands last. `names`: what a subject is called, where it is not the page's own.
 */
export function findingGroups(
  findings: readonly Finding[],
  names: ReadonlyMap<string, string>,
  options: ViewOptions,
): FindingGroup[] {
  const byRule = new Map<string, Finding[]>();
  for (const one of findings) byRule.set(one.ruleId, [...(byRule.get(one.ruleId) ?? []), one]);
  return [...byRule]
    .map(([ruleId, of]) => groupOf(ruleId, of, names, options))
    .toSorted(
      (one, other) =>
        Number(one.silent) - Number(other.silent) ||
        LEVELS.indexOf(one.level) - LEVELS.indexOf(other.level) ||
        one.ruleId.localeCompare(other.ruleId, 'en'),
    );
}

function groupOf(
  ruleId: string,
  findings: readonly Finding[],
  names: ReadonlyMap<string, string>,
  options: ViewOptions,
): FindingGroup {
  const rule = ruleNamed(ruleId)!;
  const speaking = findings.filter(({ silenced }) => silenced === null);
  const levels = (speaking.length > 0 ? speaking : findings).map(({ level }) => level);
  return {
    ruleId,
    title: rule.title,
    statement: rule.statement,
    source: rule.provenance.source,
    level: LEVELS.find((level) => levels.includes(level))!,
    silent: speaking.length === 0,
    lines: findings.map(({ subject, input, level, remark: { message, parts }, silenced }) => ({
      subject,
      about: names.get(subject) ?? '',
      level,
      input,
      text: writeSaid(message, parts, options),
      silenced: silenced && { reason: silenced.reason, at: momentText(silenced.at) },
    })),
  };
}
