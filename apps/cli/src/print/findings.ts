import type { FindingGroup } from '@pullbook/views';
import type { EdgeFinding } from '@pullbook/workshop';
import type { Context } from '../context.ts';

/** Findings as lines: level, rule and sentence; a silenced one with its reason. */
export function findingLines(findings: readonly EdgeFinding[], context: Context, indent = '  '): string[] {
  return findings.map(({ level, ruleId, about, message, silenced }) =>
    line({ level, ruleId, text: spokenOf(about, message), silenced }, context, indent),
  );
}

/** The findings of a page under their heading. */
export function findingSection(groups: readonly FindingGroup[], context: Context): string[] {
  if (groups.length === 0) return [];
  const lines = groups.flatMap(({ ruleId, lines: all }) =>
    all.map(({ about, text, level, silenced }) =>
      line({ level, ruleId, text: spokenOf(about, text), silenced }, context, '  '),
    ),
  );
  return ['', context.colours.bold('Findings'), ...lines];
}

const spokenOf = (about: string, text: string): string => (about === '' ? text : `${about}: ${text}`);

function line(
  one: { level: EdgeFinding['level']; ruleId: string; text: string; silenced: EdgeFinding['silenced'] },
  { colours: { red, yellow, dim } }: Context,
  indent: string,
): string {
  const paint = { alarm: red, caution: yellow, note: dim }[one.level];
  if (one.silenced !== null)
    return dim(`${indent}silenced ${one.ruleId}  ${one.text} (${one.silenced.reason})`);
  return `${indent}${paint(one.level.padEnd(8))} ${one.ruleId}  ${one.text}`;
}
