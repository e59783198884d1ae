import type { Comparison, ConditionDifference } from '../compare/index.ts';
import type { Pull } from '../pull/index.ts';
import { percentFigure } from '../quantity/index.ts';
import { joined, type Remark, type Said, said } from '../remark/index.ts';
import { boostIndex } from './boost-index.ts';
import type { Finding, RuleThresholds } from './model.ts';
import { type Speaker, speakerOf } from './speaker.ts';
import { findingsOfRemarks } from './wrapped-remarks.ts';

export interface ComparisonContext {
  /** `trial <id>`; '' where nothing is kept of it. */
  subject: string;
  /** Its pulls by id. */
  pulls: ReadonlyMap<string, Pull>;
  /** Remarks made beside the comparison: what changed on the sheets. */
  remarks?: readonly Remark[];
  thresholds?: RuleThresholds;
}

/** Which rule a condition that differs belongs to. */
const RULE_OF_CONDITION: readonly { rule: string; ids: RegExp }[] = [
  { rule: 'V25', ids: /-start$/ },
  { rule: 'V33', ids: /^(lambda|spark|tune-spark|tune-lambda)$/ },
  { rule: 'V35', ids: /^(boost-tap|charge-probe|inlet-probe)$/ },
];

/** Rules whose findings a table of conditions and badges shows already, beside the remedy. */
export const SHOWN_AS_CONDITIONS: readonly string[] = ['V25', 'V26', 'V33', 'V35'];

/** What the rules say of a comparison as a whole. What they say of its pulls is `findingsOfPull`. */
export function findingsOfComparison(
  comparison: Comparison,
  { subject, pulls, remarks = [], thresholds = {} }: ComparisonContext,
): Finding[] {
  const speaker = speakerOf(subject, thresholds);
  const tapDiffers = comparison.conditions.some(({ id, state }) => id === 'boost-tap' && state === 'differs');
  const own = comparison.remarks.filter(({ code }) => !(tapDiffers && code === 'boost-tap-moved'));
  return [
    ...findingsOfRemarks([...remarks, ...own], speaker),
    ...comparison.conditions.flatMap((condition) => ofCondition(condition, speaker)),
    ...drift(comparison, speaker),
    ...boostIndex(comparison, pulls, speaker),
  ];
}

function ofCondition(condition: ConditionDifference, { find }: Speaker): Finding[] {
  const of = RULE_OF_CONDITION.find(({ ids }) => ids.test(condition.id));
  if (of === undefined || condition.state !== 'differs') return [];
  const sides = Object.entries(condition.values).map(([key, text]): Said => {
    const parts = condition.parts?.[key];
    return said`${key} ${parts === undefined ? text : { text, parts }}`;
  });
  return [
    find(of.rule, {
      input: condition.label,
      said: said`${condition.label}: ${joined(sides, ', ')}. ${condition.why}`,
    }),
  ];
}

function drift({ trends }: Comparison, { limit, find }: Speaker): Finding[] {
  const threshold = limit('V28.share');
  return trends.flatMap(({ group, pulls, perPull, state }) => {
    const value = perPull * (pulls - 1);
    if (state !== 'seen' || !(Math.abs(value) > threshold)) return [];
    return [
      find('V28', {
        input: `Power through the pulls of ${group}`,
        kind: 'ratio',
        value,
        threshold: value < 0 ? -threshold : threshold,
        said: said`Through its ${pulls} pulls ${group} ${value < 0 ? 'lost' : 'gained'} ${percentFigure(Math.abs(value), 1)} of power; ${percentFigure(threshold, 1)} is let pass. Warm up longer, wait alike between pulls, or go back to the first combination at the end.`,
      }),
    ];
  });
}
