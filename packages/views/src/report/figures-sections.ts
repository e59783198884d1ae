import type { ShownTable } from '../model.ts';
import type { ReportBlock, ReportSection } from '../publish/model.ts';
import { paragraph } from './answer-section.ts';
import type { ReportInView } from './report-in-view.ts';

/** The curves of every pull with the band of the gain, and their exact figures; without a curve it says so. */
export function curvesSection({ page, view }: ReportInView): ReportSection {
  const { chart, cursor } = page;
  const blocks: ReportBlock[] =
    chart === null || cursor === null
      ? [paragraph('There is no curve to draw: no counted pull has figures over engine speed.')]
      : [
          { kind: 'chart', chart, cursor },
          paragraph(
            `Thick: the mean of a combination. Thin: each pull.${view.gains.length === 0 ? '' : ' Shaded round the gain: its 95\u00a0% band, where it is known.'}`,
            'quiet',
          ),
        ];
  return { id: 'curves', title: 'Curves', blocks };
}

/** Figures at chosen speeds and averages over the window: what the answer is read off. */
export function tableSection({ page }: ReportInView): ReportSection | null {
  return ofTables('table', 'Figures', [page.survey, page.atSpeeds, page.averages]);
}

/** The highest figures, and what the bands are made of. */
export function moreFiguresSection({ page }: ReportInView): ReportSection | null {
  return ofTables('figures', 'More figures', [page.peaks, ...page.bands]);
}

function ofTables(id: string, title: string, all: readonly (ShownTable | null)[]): ReportSection | null {
  const tables = all.filter((table) => table !== null);
  if (tables.length === 0) return null;
  return { id, title, blocks: tables.map((table) => ({ kind: 'table', table })) };
}
