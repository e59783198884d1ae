import type { ReportBlock, ReportSection } from '../publish/model.ts';
import { isInvented } from '../trial-in-view.ts';
import { capitalised } from '../wording.ts';
import type { ReportInView } from './report-in-view.ts';

/** Of more gains than these what may be said stands in the appendix: it would be pages. */
const MOST_GAINS = 2;

/** What may be said and what not, and what to know before believing it. */
export function answerSection(report: ReportInView): ReportSection {
  const { view, page } = report;
  const invented = isInvented(view);
  // The warning over the report says it already.
  const caveats = page.caveats.filter((one) => !(invented && one.startsWith('Invented data')));
  const blocks: ReportBlock[] = [
    ...(page.ownRemark === '' ? [] : [paragraph(page.ownRemark)]),
    ...(page.mayAndMayNot.length > MOST_GAINS
      ? [paragraph('What may be said of each gain, and what not, stands in the appendix.')]
      : mayAndMayNot(report)),
    ...lines('To know before believing it', caveats),
  ];
  return {
    id: 'answer',
    title: 'What the answer says',
    blocks: blocks.length > 0 ? blocks : [paragraph('No gain is claimed: the sentence above is all of it.')],
  };
}

/** What may be said of each of many gains; `null`: it stands under the answer. */
export function gainsSection(report: ReportInView): ReportSection | null {
  if (report.page.mayAndMayNot.length <= MOST_GAINS) return null;
  return { id: 'gains', title: 'What may be said of each gain', blocks: mayAndMayNot(report) };
}

function mayAndMayNot({ page }: ReportInView): ReportBlock[] {
  const several = page.mayAndMayNot.length > 1;
  return page.mayAndMayNot.flatMap(({ title, may, mayNot }): ReportBlock[] => [
    ...lines(several ? `What may be said of ${title}` : 'What may be said', may),
    ...lines(several ? `What may not be said of ${title}` : 'What may not be said', mayNot),
  ]);
}

/** Why each gain came out so; `null` where none is told. What would settle it stands among the next steps. */
export function whySection({ page }: ReportInView): ReportSection | null {
  if (page.why.length === 0) return null;
  return {
    id: 'why',
    title: 'Why it came out so',
    blocks: page.why.flatMap(({ name, sentence, evidence, notExcluded }): ReportBlock[] => [
      ...(name === '' ? [] : [{ kind: 'paragraph', text: name, tone: 'strong' } as const]),
      paragraph(sentence),
      ...lines(
        'What speaks for it and against it',
        (['for', 'against'] as const).flatMap((side) => {
          const said = evidence.filter(({ speaks }) => speaks === side).map(({ text }) => text);
          return said.length === 0 ? [] : [`${capitalised(side)}: ${said.join(' ')}`];
        }),
      ),
      ...lines(
        'What the data cannot exclude',
        notExcluded.map(({ text }) => text),
      ),
    ]),
  };
}

export const paragraph = (text: string, tone: 'plain' | 'strong' | 'quiet' = 'plain'): ReportBlock => ({
  kind: 'paragraph',
  text,
  tone,
});

/** A list under its heading; nothing where it has no items. */
export const lines = (heading: string, items: string[]): ReportBlock[] =>
  items.length === 0 ? [] : [paragraph(heading, 'strong'), { kind: 'list', items }];
