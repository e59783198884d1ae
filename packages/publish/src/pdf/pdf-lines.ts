import type { Pdf } from './new-pdf.ts';
import { isForeign, putText, type TextLook, widthOfText } from './pdf-text.ts';

/** A stretch of words in one face, size and colour. */
export interface Run extends TextLook {
  text: string;
}

export interface Line {
  runs: { run: Run; text: string; x: number }[];
  width: number;
}

/** Runs broken into lines at plain spaces; a word longer than a line is broken where it is full. */
export function linesOf(pdf: Pdf, runs: readonly Run[], width: number): Line[] {
  const lines: Line[] = [];
  let line: Line = { runs: [], width: 0 };
  let space = 0;
  const push = (): void => {
    if (line.runs.length > 0) lines.push(line);
    line = { runs: [], width: 0 };
    space = 0;
  };
  const put = (run: Run, text: string, wide: number): void => {
    const before = line.runs.at(-1);
    // Words of another script are drawn by themselves, so that the others stay in the shipped letters.
    const last = before && isForeign(before.text) !== isForeign(text) ? undefined : before;
    if (last?.run === run && space > 0) last.text += ` ${text}`;
    else if (last?.run === run) last.text += text;
    else line.runs.push({ run, text, x: line.width + space });
    line.width += space + wide;
    space = 0;
  };
  for (const run of runs) {
    const spaceWidth = widthOf(pdf, run, ' ');
    for (const [place, piece] of run.text.split(/[ \p{Cc}]+/u).entries()) {
      if (place > 0 && line.runs.length > 0) space = spaceWidth;
      if (piece === '') continue;
      for (const [part, word] of broken(pdf, run, piece, width).entries()) {
        const wide = widthOf(pdf, run, word);
        if (part > 0 || line.width + space + wide > width) push();
        put(run, word, wide);
      }
    }
  }
  push();
  return lines;
}

/** A word in pieces that fit on a line. */
function broken(pdf: Pdf, run: Run, word: string, width: number): string[] {
  if (widthOf(pdf, run, word) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const sign of word) {
    if (piece !== '' && widthOf(pdf, run, piece + sign) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += sign;
  }
  return [...pieces, piece];
}

export const widthOf = (pdf: Pdf, run: Run, text: string): number => widthOfText(pdf, text, run);

/** Draws a line with its baseline there. */
export function drawLine(pdf: Pdf, { runs }: Line, x: number, baseline: number): void {
  for (const { run, text, x: along } of runs) putText(pdf, text, run, x + along, baseline);
}
