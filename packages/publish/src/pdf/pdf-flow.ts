import { THEMES } from '@pullbook/charts';
import type { Pdf } from './new-pdf.ts';
import { drawLine, linesOf, type Run } from './pdf-lines.ts';

type Structure = ReturnType<Pdf['struct']>;

/** Points between a page's edge and what stands on it. */
export const MARGIN = { side: 48, top: 42, bottom: 56 } as const;
const LEADING = 1.36;

/** Pages that are filled from top to bottom, each thing tagged with what it is. */
export class PdfFlow {
  readonly pdf: Pdf;
  readonly left = MARGIN.side;
  readonly width: number;
  readonly bottom: number;
  readonly document: Structure;
  y: number = MARGIN.top;

  constructor(pdf: Pdf, { width, height }: { width: number; height: number }) {
    this.pdf = pdf;
    this.width = width - 2 * MARGIN.side;
    this.bottom = height - MARGIN.bottom;
    this.document = pdf.struct('Document');
    pdf.addStructure(this.document);
    pdf.addPage();
  }

  get room(): number {
    return this.bottom - this.y;
  }

  /** Goes on to a new page where less than that is left of this one. */
  need(height: number): void {
    if (height <= this.room || this.y <= MARGIN.top) return;
    this.pdf.addPage();
    this.y = MARGIN.top;
  }

  space(height: number): void {
    this.y += height;
  }

  /** What only decorates: a rule, a ground. */
  decorated(draw: () => void): void {
    this.pdf.markContent('Artifact', { type: 'Layout' });
    draw();
    this.pdf.endMarkedContent();
  }

  rule(x: number, y: number, width: number, look: { colour?: string; weight?: number } = {}): void {
    this.decorated(() => {
      const { colour = THEMES.light.rule, weight = 0.6 } = look;
      this.pdf.save().lineWidth(weight).strokeColor(colour);
      this.pdf
        .moveTo(x, y)
        .lineTo(x + width, y)
        .stroke()
        .restore();
    });
  }

  /** Runs as one paragraph, over as many pages as it takes. `sign`: before its first line, in its indent. */
  paragraph(
    runs: readonly Run[],
    {
      type = 'P',
      indent = 0,
      sign,
      into = this.document,
      leading = LEADING,
    }: { type?: string; indent?: number; sign?: Run; into?: Structure; leading?: number } = {},
  ): void {
    const lines = linesOf(this.pdf, runs, this.width - indent);
    const size = Math.max(...runs.map((run) => run.size));
    const height = leading * size;
    const element = this.pdf.struct(type);
    into.add(element);
    // Two lines stay together, so that none stands alone at a page's end.
    this.need(Math.min(lines.length, 2) * height);
    for (const [place, line] of lines.entries()) {
      this.need(height);
      const baseline = this.y + 0.5 * (height - size) + 0.8 * size;
      element.add(() => {
        if (place === 0 && sign)
          drawLine(this.pdf, { runs: [{ run: sign, text: sign.text, x: 0 }], width: 0 }, this.left, baseline);
        drawLine(this.pdf, line, this.left + indent, baseline);
      });
      this.y += height;
    }
    element.end();
  }
}
