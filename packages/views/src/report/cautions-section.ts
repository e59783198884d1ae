import { cautionsOf, PLANNING_AID } from '@pullbook/core/plan';
import type { ReportSection } from '../publish/model.ts';
import { inSentence, listed } from '../wording.ts';
import { paragraph } from './answer-section.ts';
import { isOfLimits } from './limits-section.ts';
import { matchFindings } from './match-limits.ts';
import type { ReportInView } from './report-in-view.ts';

/** What can hurt people or hardware, and that all of this is a planning aid; alarms of the rules are named here and said where they stand. */
export function cautionsSection(report: ReportInView): ReportSection {
  const alarms = [
    ...report.page.findings,
    ...matchFindings(report).filter(({ ruleId }) => isOfLimits(ruleId)),
  ].filter(({ level, silent }) => level === 'alarm' && !silent);
  const titles = [...new Set(alarms.map(({ title }) => inSentence(title)))];
  return {
    id: 'cautions',
    title: 'Cautions',
    blocks: [
      {
        kind: 'cautions',
        items: [
          PLANNING_AID,
          ...(titles.length === 0
            ? []
            : [
                `Alarms stand above, under margins and limits: ${listed(titles)}. See to them before the next pull.`,
              ]),
          ...cautionsOf(report.more.engine),
        ],
      },
      paragraph('Of the engine’s kind: common practice, no source.', 'quiet'),
    ],
  };
}
