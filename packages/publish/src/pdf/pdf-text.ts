import { escaped, type Face, FONT_FILES, missingSigns, textWidth } from '@pullbook/charts';
import { Resvg } from '@resvg/resvg-js';
import { fontPaths } from '../font-folder.ts';
import type { Pdf } from './new-pdf.ts';

export interface TextLook {
  face: Face;
  size: number;
  colour: string;
}

/** Pixels for one point of text that is drawn as a picture: sharp in print. */
const SHARP = 4;

/** Draws a text on its baseline. Signs of other scripts, which the shipped letters lack, come as a picture in the machine's own letters. */
export function putText(pdf: Pdf, text: string, look: TextLook, x: number, baseline: number): void {
  if (isForeign(text)) {
    putForeign(pdf, text, look, x, baseline);
    return;
  }
  pdf.font(look.face).fontSize(look.size).fillColor(look.colour);
  pdf.text(text, x, baseline, { lineBreak: false, baseline: 'alphabetic' });
}

/** Its width in points; a sign of another script counts one em. */
export const widthOfText = (pdf: Pdf, text: string, { face, size }: TextLook): number =>
  isForeign(text) ? textWidth(text, size, face) : pdf.font(face).fontSize(size).widthOfString(text);

/** Whether the shipped letters lack a sign of it. */
export const isForeign = (text: string): boolean =>
  missingSigns({ nodes: [{ tag: 'text', attributes: {}, children: [], text }] }).length > 0;

function putForeign(pdf: Pdf, text: string, look: TextLook, x: number, baseline: number): void {
  const room = widthOfText(pdf, text, look);
  const { family, weight } = FONT_FILES[look.face];
  const height = 2 * look.size;
  const draw = (width: number) =>
    new Resvg(
      `<svg xmlns="http://www.w3.org/2000/svg" width="${SHARP * width}" height="${SHARP * height}" viewBox="0 0 ${width} ${height}"><text x="0" y="${1.4 * look.size}" font-family="${family}" font-weight="${weight}" font-size="${look.size}" fill="${look.colour}">${escaped(text)}</text></svg>`,
      { font: { loadSystemFonts: true, fontFiles: fontPaths(), defaultFontFamily: family } },
    );
  const box = draw(room).getBBox();
  const drawn = Math.max(1, box === undefined ? room : box.x + box.width);
  // Wider than reckoned, it is drawn smaller: it must not run into what stands beside it.
  const scale = Math.min(1, room / drawn);
  pdf.markContent('Span', { actual: text });
  pdf.image(Buffer.from(draw(drawn).render().asPng()), x, baseline - 1.4 * look.size * scale, {
    width: drawn * scale,
    height: height * scale,
  });
  pdf.endMarkedContent();
}
