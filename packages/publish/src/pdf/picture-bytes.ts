import { Resvg } from '@resvg/resvg-js';

/** Wide enough for a mark on a printed page or a 4K still. */
const MARK_WIDTH = 960;

/** The bytes of a PNG behind a data address; an SVG (a shop's mark) is drawn, since a PDF takes no SVG in. */
export function pictureBytes(address: string): Buffer {
  const match = /^data:(image\/(?:png|svg\+xml));base64,(.+)$/su.exec(address);
  if (!match) throw new Error('A picture in a still carries its own PNG or SVG data.');
  const bytes = Buffer.from(match[2]!, 'base64');
  if (match[1] === 'image/png') return bytes;
  const drawn = new Resvg(bytes.toString('utf8'), {
    fitTo: { mode: 'width', value: MARK_WIDTH },
    font: { loadSystemFonts: false },
  });
  return Buffer.from(drawn.render().asPng());
}
