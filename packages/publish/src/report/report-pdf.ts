import type { Paper } from '@pullbook/views';
import type { ReportDescription } from '@pullbook/views/publish';
import { bytesOf, newPdf } from '../pdf/new-pdf.ts';
import { PdfFlow } from '../pdf/pdf-flow.ts';
import { appendixHead, blockInPdf, sectionHead, signaturePlace } from './pdf-blocks.ts';
import { pageFeet } from './pdf-feet.ts';
import { reportHead } from './pdf-head.ts';

/** Points. */
export const PAPER_SIZES = {
  a4: { width: 595.28, height: 841.89 },
  letter: { width: 612, height: 792 },
} as const satisfies Record<Paper, object>;

/**
 * A customer's report as a PDF to be printed or sent: tagged, with an outline, its curves as lines and its words as words. It says
 * what the HTML says. The same report gives the same bytes; its date is that of the last pull.
 *
 * @example writeFileSync(name, await reportPdf(report, { paper: 'a4' }))
 */
export async function reportPdf(
  report: ReportDescription,
  { numbers, paper = 'a4' }: { numbers?: unknown; paper?: Paper } = {},
): Promise<Uint8Array> {
  const size = PAPER_SIZES[paper];
  const pdf = newPdf({ title: report.question, ...size, day: report.day, numbers });
  const flow = new PdfFlow(pdf, size);
  reportHead(flow, report);
  const sectionsInPdf = (sections: ReportDescription['sections']): void => {
    for (const { title, blocks } of sections) {
      sectionHead(flow, title, blocks[0]);
      for (const block of blocks) blockInPdf(flow, block);
    }
  };
  sectionsInPdf(report.sections);
  signaturePlace(flow, report);
  if (report.appendix.length > 0) appendixHead(flow);
  sectionsInPdf(report.appendix);
  flow.document.end();
  pageFeet(pdf, report, size);
  return bytesOf(pdf);
}
