import { drawStill, type StillDescription, type StillSize } from '@pullbook/charts';
import { bytesOf, newPdf } from './new-pdf.ts';
import { drawSceneIn } from './scene-in-pdf.ts';

/**
 * A still as a PDF of one page, as many points as it has pixels: lines as lines, text as text, with the letters in it. Without a
 * ground the page is bare behind it. `numbers`: JSON that goes along as an attached file.
 */
export async function stillPdf(
  still: StillDescription,
  size: StillSize,
  { numbers }: { numbers?: unknown } = {},
): Promise<Uint8Array> {
  const { width, height } = size;
  const scene = drawStill(still, size);
  const pdf = newPdf({ title: still.headline, width, height, day: null, numbers });
  pdf.addPage();
  const words = [still.headline, still.subline, still.alternative].filter(Boolean).join(' ');
  const figure = pdf.struct('Figure', { alt: words }, () =>
    drawSceneIn(pdf, scene, { x: 0, y: 0, scale: 1 }),
  );
  pdf.addStructure(pdf.struct('Document', {}, [figure]));
  return bytesOf(pdf);
}
