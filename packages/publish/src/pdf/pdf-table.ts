import { drawnStyle, THEMES } from '@pullbook/charts';
import type { ShownTable } from '@pullbook/views';
import {
  type Column,
  columnsOf,
  INK,
  PAD,
  partsOf,
  SIZE,
  SWATCH,
  swatchRoom,
  widthsOf,
} from './pdf-columns.ts';
import type { PdfFlow } from './pdf-flow.ts';
import { drawLine, type Line, linesOf, type Run } from './pdf-lines.ts';

const LINE = 1.32 * SIZE;
const SOFT = THEMES.light.softInk;

/**
 * A table in as many parts side by side as the page's width takes, each with its rows' names. A row is never split: it goes to
 * the next page whole, under the heads again.
 */
export function tableInPdf(flow: PdfFlow, table: ShownTable): void {
  const [names, ...others] = columnsOf(flow, table);
  if (!names) return;
  for (const part of partsOf(names, others, flow.width)) drawPart(flow, table.title, part);
}

function drawPart(flow: PdfFlow, title: string, columns: readonly Column[]): void {
  const { pdf } = flow;
  const widths = widthsOf(columns, flow.width);
  const whole = widths.reduce((sum, one) => sum + one, 0);
  const lefts = widths.map(
    (_, place) => flow.left + widths.slice(0, place).reduce((sum, one) => sum + one, 0),
  );
  const linesIn = (run: Run, place: number, swatch = 0): Line[] =>
    linesOf(pdf, [run], widths[place]! - 2 * PAD.x - swatch + 0.01);
  const rowsOfLines = columns[0]!.cells.map((_, row) =>
    columns.map(({ cells }, place) => linesIn(cells[row]!, place)),
  );
  const heads = columns.map(({ head, combination }, place) => linesIn(head, place, swatchRoom(combination)));
  const heightOf = (cells: readonly Line[][]) =>
    Math.max(1, ...cells.map((lines) => lines.length)) * LINE + 2 * PAD.y;
  const headHeight = heightOf(heads);

  const first = rowsOfLines.slice(0, FEW).reduce((sum, cells) => sum + heightOf(cells), 0);
  flow.need(18 + headHeight + first);
  flow.space(3);
  flow.paragraph([{ text: title, face: 'sansStrong', size: 8.4, colour: INK }], { type: 'Caption' });
  flow.space(1);
  const element = pdf.struct('Table');
  flow.document.add(element);

  const drawHead = (isFirst: boolean): void => {
    const row = isFirst ? pdf.struct('TR') : null;
    if (row) element.add(row);
    for (const [place, lines] of heads.entries()) {
      const { combination, isFigures } = columns[place]!;
      const swatch = swatchRoom(combination);
      if (combination !== null)
        drawSwatch(flow, combination, swatchLeft(place, lines, isFigures), flow.y + PAD.y);
      const draw = () => drawCell(lines, place, isFigures, swatch);
      // Heads on a further page repeat what was read out already.
      if (row) row.add(pdf.struct('TH', { scope: 'Column' } as never, [draw]));
      else flow.decorated(draw);
    }
    row?.end();
    flow.y += headHeight;
    flow.rule(flow.left, flow.y, whole, { colour: INK, weight: 0.8 });
  };
  const swatchLeft = (place: number, lines: readonly Line[], isFigures: boolean): number =>
    isFigures
      ? lefts[place]! + widths[place]! - PAD.x - (lines[0]?.width ?? 0) - SWATCH - 4
      : lefts[place]! + PAD.x;
  const drawCell = (lines: readonly Line[], place: number, isFigures: boolean, swatch = 0): void => {
    for (const [index, line] of lines.entries()) {
      const x = isFigures
        ? lefts[place]! + widths[place]! - PAD.x - line.width
        : lefts[place]! + PAD.x + swatch;
      drawLine(pdf, line, x, flow.y + PAD.y + index * LINE + 0.85 * SIZE);
    }
  };

  if (columns.some(({ head }) => head.text !== '')) drawHead(true);
  const heights = rowsOfLines.map(heightOf);
  for (const [index, cells] of rowsOfLines.entries()) {
    const height = heights[index]!;
    const few = keptTogether(heights.slice(index));
    if (height > flow.room || few > flow.room) {
      flow.need(Math.max(height, few) + headHeight);
      drawHead(false);
    }
    const row = pdf.struct('TR');
    element.add(row);
    for (const [place, lines] of cells.entries()) {
      const draw = () => drawCell(lines, place, columns[place]!.isFigures);
      row.add(
        place === 0 ? pdf.struct('TH', { scope: 'Row' } as never, [draw]) : pdf.struct('TD', {}, [draw]),
      );
    }
    row.end();
    flow.y += height;
    if (index < rowsOfLines.length - 1) flow.rule(flow.left, flow.y, whole);
  }
  element.end();
  flow.rule(flow.left, flow.y, whole, { colour: SOFT });
  flow.space(5);
}

/** Fewer rows than these do not stand alone on the next page. */
const FEW = 3;

/** How high the last few rows are together, from the first of them on; elsewhere 0. */
const keptTogether = (heights: readonly number[]): number =>
  heights.length === FEW ? heights.reduce((sum, one) => sum + one, 0) : 0;

/** A sample of the combination's line before its key. */
function drawSwatch(flow: PdfFlow, combination: number, x: number, y: number): void {
  const { colour, dash } = drawnStyle({ combination }, 'light');
  flow.decorated(() => {
    const { pdf } = flow;
    pdf.save().lineWidth(1.8).strokeColor(colour);
    if (dash.length > 0) pdf.dash(dash.map((part) => 1.8 * part) as unknown as number, {});
    pdf
      .moveTo(x, y + 0.55 * SIZE)
      .lineTo(x + SWATCH, y + 0.55 * SIZE)
      .stroke()
      .restore();
  });
}
