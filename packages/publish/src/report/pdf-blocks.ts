import { drawStack, THEMES } from '@pullbook/charts';
import type { ReportBlock, ReportDescription } from '@pullbook/views/publish';
import type { PdfFlow } from '../pdf/pdf-flow.ts';
import type { Run } from '../pdf/pdf-lines.ts';
import { tableInPdf } from '../pdf/pdf-table.ts';
import { drawSceneIn } from '../pdf/scene-in-pdf.ts';
import { boxed, boxHeight } from './pdf-box.ts';

const { ink, softInk, cautionChip, cautionInk } = THEMES.light;
const SIZE = 8.8;
/** Pixels of a drawing for one point: its text of 13 px comes out at 8.7 points. */
const DRAWN = 1.5;
const TEXT = 13;

const run = (text: string, more: Partial<Run> = {}): Run => ({
  text,
  face: 'sans',
  size: SIZE,
  colour: ink,
  ...more,
});

/** A section's title, with room under it for the beginning of what it is over. */
export function sectionHead(flow: PdfFlow, title: string, first: ReportBlock | undefined): void {
  flow.need(HEAD + leastUnder(flow, first));
  flow.space(8);
  flow.rule(flow.left, flow.y, flow.width, { colour: ink, weight: 0.8 });
  flow.space(4);
  flow.pdf.outline.addItem(title);
  flow.paragraph([run(title, { face: 'serifStrong', size: 12.5 })], { type: 'H2', leading: 1.2 });
  flow.space(2);
}

const HEAD = 34;

/** What of a section's first block must stand under its title. */
function leastUnder(flow: PdfFlow, first: ReportBlock | undefined): number {
  if (first?.kind === 'chart') return LEAST_OF_CHART * chartHeight(flow, first);
  if (first?.kind === 'cautions') return boxHeight(flow, runsOf(first.items));
  return 56;
}

const runsOf = (items: readonly string[]): Run[][] => items.map((item) => [run(item)]);

/** Over the sections that only who looks closer reads; they begin on a page of their own where the one before is well filled. */
export function appendixHead(flow: PdfFlow): void {
  flow.need(200);
  flow.space(14);
  flow.paragraph([run('Appendix: what it rests on', { face: 'sansStrong', size: 8.2, colour: softInk })]);
}

/** One block of a section, as the HTML report has it. */
export function blockInPdf(flow: PdfFlow, block: ReportBlock): void {
  switch (block.kind) {
    case 'paragraph': {
      const { text, tone } = block;
      if (tone === 'strong') {
        flow.need(6 * SIZE);
        flow.space(2);
      }
      flow.paragraph([
        run(text, tone === 'strong' ? { face: 'sansStrong' } : { colour: tone === 'quiet' ? softInk : ink }),
      ]);
      flow.space(3);
      return;
    }
    case 'list':
      list(flow, block.items);
      return;
    case 'facts':
      for (const { label, value } of block.rows)
        flow.paragraph([run(`${label}: `, { face: 'sansStrong' }), run(value)]);
      flow.space(4);
      return;
    case 'table':
      tableInPdf(flow, block.table);
      return;
    case 'chart':
      chart(flow, block);
      return;
    case 'badges':
      tableInPdf(flow, {
        id: 'badges',
        title: 'What the comparison shows for itself',
        columns: [
          { text: '', combination: null },
          { text: '', combination: null },
        ],
        rows: block.badges.map(({ label, earned, why }) => ({
          name: label,
          unit: '',
          cells: [earned ? 'earned' : 'not earned', why],
        })),
      });
      return;
    case 'cautions':
      boxed(flow, { ground: cautionChip, bar: cautionInk }, runsOf(block.items));
      flow.space(3);
  }
}

function list(flow: PdfFlow, items: readonly string[]): void {
  const element = flow.pdf.struct('L');
  flow.document.add(element);
  for (const item of items) {
    flow.paragraph([run(item)], { type: 'LI', indent: 12, sign: run('•'), into: element });
    flow.space(0.5);
  }
  element.end();
  flow.space(3);
}

type ChartBlock = Extract<ReportBlock, { kind: 'chart' }>;

/** As high as its panels need, at most what a page has under a title. */
const chartHeight = (flow: PdfFlow, { chart: { panels }, cursor: { columns } }: ChartBlock): number => {
  const shares = panels.reduce((sum, { share }) => sum + share, 0);
  // Many combinations are named in rows over their curves, which then lie closer.
  const many = columns.filter(({ combination }) => combination !== null).length - FEW_CURVES;
  const height = many > 0 ? 46 + 12 * many + 90 * shares : 46 + 58 * shares;
  return Math.min(flow.bottom - 130, height);
};

/** So many curves are named at their ends. */
const FEW_CURVES = 4;

/** A chart is made lower by so much, before it goes to a page of its own. */
const LEAST_OF_CHART = 0.75;

function chart(flow: PdfFlow, block: ChartBlock): void {
  const { pdf } = flow;
  const ideal = chartHeight(flow, block);
  flow.need(LEAST_OF_CHART * ideal);
  const height = Math.min(ideal, flow.room);
  const { scene } = drawStack(
    block.chart,
    { width: DRAWN * flow.width, height: DRAWN * height, text: TEXT, theme: 'light', ground: false },
    false,
  );
  const top = flow.y;
  flow.document.add(
    pdf.struct('Figure', { alt: block.chart.alternative }, [
      () => drawSceneIn(pdf, scene, { x: flow.left, y: top, scale: 1 / DRAWN }),
    ]),
  );
  flow.y += height;
  flow.space(6);
}

/** Where the shop puts its name under the report. */
export function signaturePlace(flow: PdfFlow, { signature, contact }: ReportDescription): void {
  flow.need(58);
  flow.space(28);
  const half = flow.width / 2 - 15;
  flow.rule(flow.left, flow.y, half, { colour: ink });
  flow.rule(flow.left + flow.width - half, flow.y, half, { colour: ink });
  flow.space(3);
  flow.paragraph([run('Signed for the shop, and the day', { size: 8, colour: softInk })]);
  const words = [signature?.name ?? '', contact].filter(Boolean).join(' · ');
  if (words !== '') flow.paragraph([run(words, { size: 8.5 })]);
}
