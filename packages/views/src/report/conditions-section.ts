import type { ConditionDifference } from '@pullbook/core/compare';
import { isOfParts } from '@pullbook/core/compare';
import { dayText } from '../date.ts';
import { valuesText } from '../like-for-like.ts';
import type { ShownTable } from '../model.ts';
import type { ReportBlock, ReportSection } from '../publish/model.ts';
import { capitalised, inSentence } from '../wording.ts';
import { paragraph } from './answer-section.ts';
import type { ReportInView } from './report-in-view.ts';

/**
 * What the compared pulls were made under: what the comparison shows for itself, what differs or is not known with what alike would
 * mean, then what is alike in a few lines.
 */
export function conditionsSection(report: ReportInView): ReportSection {
  const { page, view } = report;
  const conditions = (view.comparison?.conditions ?? []).filter((one) => !isOfParts(one));
  const open = conditions.filter(({ state }) => state !== 'alike');
  const alike = conditions.filter(({ state }) => state === 'alike');
  const blocks: ReportBlock[] = [
    paragraph(page.basis),
    ...(page.badges.length === 0 ? [] : [{ kind: 'badges', badges: page.badges } as const]),
    ...(conditions.length === 0
      ? [paragraph('No conditions are compared: fewer than two combinations have a counted pull.')]
      : []),
    ...(open.length === 0 ? [] : [{ kind: 'table', table: openTable(report, open) } as const]),
    ...(alike.length === 0
      ? []
      : [
          paragraph('What is alike', 'strong'),
          paragraph(
            `${capitalised(alike.map((one) => `${inSentence(one.label)}: ${withDays(valuesText(view, one, true))}`).join('; '))}.`,
          ),
        ]),
  ];
  return { id: 'conditions', title: 'Conditions', blocks };
}

const openTable = ({ view }: ReportInView, conditions: readonly ConditionDifference[]): ShownTable => ({
  id: 'conditions-open',
  title: 'What differs between the compared pulls, or is not known',
  columns: ['As noted', 'What is let pass'].map((text) => ({ text, combination: null })),
  rows: conditions
    .toSorted((one, other) => Number(one.state === 'unknown') - Number(other.state === 'unknown'))
    .map((one) => ({
      name: one.label,
      unit: '',
      cells: [
        `${one.state === 'differs' ? 'Differs' : 'Not known'}: ${withDays(valuesText(view, one, true))}`,
        one.why,
      ],
    })),
});

const withDays = (text: string): string => text.replace(/\d{4}-\d{2}-\d{2}/gu, dayText);
