import { THEMES } from '@pullbook/charts';
import type { ReportDescription } from '@pullbook/views/publish';
import type { Pdf } from '../pdf/new-pdf.ts';
import { MARGIN } from '../pdf/pdf-flow.ts';
import { drawLine, linesOf, type Run } from '../pdf/pdf-lines.ts';

/** Under every page: whose it is and what was asked, and which page of how many. */
export function pageFeet(
  pdf: Pdf,
  { question, signature, warnings }: ReportDescription,
  { width, height }: { width: number; height: number },
): void {
  const { start, count } = pdf.bufferedPageRange();
  const run = (text: string): Run => ({ text, face: 'sans', size: 8, colour: THEMES.light.softInk });
  for (let page = start; page < start + count; page += 1) {
    pdf.switchToPage(page);
    pdf.markContent('Artifact', { type: 'Pagination' });
    const baseline = height - 34;
    pdf.save().lineWidth(0.6).strokeColor(THEMES.light.rule);
    pdf
      .moveTo(MARGIN.side, baseline - 14)
      .lineTo(width - MARGIN.side, baseline - 14)
      .stroke()
      .restore();
    const number = linesOf(pdf, [run(`Page ${page - start + 1} of ${count}`)], 120)[0]!;
    drawLine(pdf, number, width - MARGIN.side - number.width, baseline);
    const words = [signature?.name ?? '', question, ...warnings.map((one) => one.split(':')[0]!)].filter(
      Boolean,
    );
    const lines = linesOf(pdf, [run(words.join(' · '))], width - 2 * MARGIN.side - number.width - 20);
    for (const [place, line] of lines.slice(0, 2).entries())
      drawLine(pdf, line, MARGIN.side, baseline + 10 * place);
    pdf.endMarkedContent();
  }
}
