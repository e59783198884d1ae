import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { NUMBERS_NAME } from './names.ts';
import { pngText } from './png-numbers.ts';
import { htmlNumbers, htmlTexts } from './read-html.ts';
import { pdfNumbers, pdfTexts } from './read-pdf.ts';
import { svgNumbers, svgTexts } from './svg-numbers.ts';

/** What a published file carries. */
export interface Published {
  kind: 'svg' | 'png' | 'pdf' | 'html';
  /** The JSON that was laid into it; `null`: none was. */
  numbers: unknown;
  /** Every line of words and figures that is drawn in it, in its order; empty of a PNG, which holds pixels. */
  texts: string[];
}

/**
 * Reads a still or report of ours back: the numbers that it carries, and what is drawn in it, so that the two can be held against
 * each other.
 *
 * @example readPublished(await readFile('answer.svg'))
 */
export function readPublished(bytes: Uint8Array): Result<Published> {
  const kind = kindOf(bytes);
  if (kind === null)
    return refused(
      remark(
        'refusal',
        'not-published-here',
        'The file is neither SVG, PNG, PDF nor HTML. Give a still or report that was published from a book.',
      ),
    );
  try {
    const { block, texts } = readers[kind](bytes);
    return accepted({ kind, numbers: block === null ? null : JSON.parse(block), texts });
  } catch {
    return refused(
      remark(
        'refusal',
        'published-file-damaged',
        `The ${kind.toUpperCase()} is damaged or was changed by another program: its numbers cannot be read. Publish it again.`,
      ),
    );
  }
}

const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('utf8');

const readers: Record<Published['kind'], (bytes: Uint8Array) => { block: string | null; texts: string[] }> = {
  svg: (bytes) => ({ block: svgNumbers(text(bytes)), texts: svgTexts(text(bytes)) }),
  png: (bytes) => ({ block: pngText(bytes, NUMBERS_NAME), texts: [] }),
  pdf: (bytes) => ({ block: pdfNumbers(bytes), texts: pdfTexts(bytes) }),
  html: (bytes) => ({ block: htmlNumbers(text(bytes)), texts: htmlTexts(text(bytes)) }),
};

/** By its first bytes, whatever its name. */
function kindOf(bytes: Uint8Array): Published['kind'] | null {
  const start = Buffer.from(bytes.subarray(0, 400)).toString('latin1');
  if (start.startsWith('\x89PNG\r\n\x1a\n')) return 'png';
  if (start.startsWith('%PDF-')) return 'pdf';
  if (/^\s*<!doctype html/iu.test(start)) return 'html';
  return /^(?:\xef\xbb\xbf)?\s*(?:<\?xml[^>]*>\s*)?<svg\b/u.test(start) ? 'svg' : null;
}
