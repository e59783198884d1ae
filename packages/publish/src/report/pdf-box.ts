import type { PdfFlow } from '../pdf/pdf-flow.ts';
import { linesOf, type Run } from '../pdf/pdf-lines.ts';

const PAD = { x: 10, y: 4 } as const;
const LEADING = 1.34;
const BETWEEN = 2;

/** How high a box about these is. */
export function boxHeight(flow: PdfFlow, paragraphs: readonly (readonly Run[])[]): number {
  return paragraphs.reduce(
    (sum, runs) => {
      const size = Math.max(...runs.map((run) => run.size));
      return sum + linesOf(flow.pdf, runs, flow.width - PAD.x).length * LEADING * size;
    },
    2 * PAD.y + (paragraphs.length - 1) * BETWEEN,
  );
}

/** Paragraphs on a ground with a bar at their left, kept on one page. */
export function boxed(
  flow: PdfFlow,
  { ground, bar }: { ground: string; bar: string },
  paragraphs: readonly (readonly Run[])[],
): void {
  const { pdf } = flow;
  const height = boxHeight(flow, paragraphs);
  flow.need(height);
  if (height <= flow.room) {
    const top = flow.y;
    flow.decorated(() => {
      pdf.save().fillColor(ground).rect(flow.left, top, flow.width, height).fill();
      pdf.fillColor(bar).rect(flow.left, top, 3, height).fill().restore();
    });
  }
  flow.space(PAD.y);
  for (const [place, runs] of paragraphs.entries()) {
    if (place > 0) flow.space(BETWEEN);
    flow.paragraph(runs, { indent: PAD.x, leading: LEADING });
  }
  flow.space(PAD.y);
}
