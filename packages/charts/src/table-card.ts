import { partOf, textBlock } from './card-text.ts';
import type { Box } from './columns.ts';
import type { CardCell, LineStyle, PictureBody, SceneNode } from './model.ts';
import { drawnStyle } from './palette.ts';
import type { PictureLook } from './picture-look.ts';
import { straight, textAt } from './scene-node.ts';
import { type TableFit, tableFit } from './table-fit.ts';
import { shortened } from './text-width.ts';
import { THEMES } from './theme.ts';

type Table = Extract<PictureBody, { kind: 'table' }>;

/** A column's sample of its line is this long at most. */
const SAMPLE_EM = 2.4;

/**
 * A table as a picture: the columns' names with their units and their combinations' lines, hair lines between the rows, the figure
 * that it is about in strong letters. What has no room is left out as `tableFit` says, and named under it.
 */
export function drawTableCard(table: Table, frame: Box, look: PictureLook): SceneNode[] {
  const theme = THEMES[look.theme];
  const fit = tableFit(
    table,
    { width: frame.right - frame.left, height: frame.bottom - frame.top },
    look.text,
  );
  const { sizePx, rowPx } = fit;
  const colourOf = (style: LineStyle) => drawnStyle(style, look.theme).colour;
  const hairline = Math.max(1, 0.05 * look.text);
  const rule = { colour: look.overlay ? theme.softInk : theme.rule, widthPx: hairline };
  const right = frame.left + fit.widthPx;
  const place = (index: number) => {
    const { left, width } = fit.columns[index]!;
    return index === 0
      ? { x: frame.left + left, anchor: 'start' as const }
      : { x: frame.left + left + width, anchor: 'end' as const };
  };
  const head = fit.columns.flatMap((column, index) => drawHead(column, place(index), frame.top, fit, look));
  const firstRow = frame.top + fit.headPx;
  const rows = fit.rows.map((cells, row) => {
    const baseline = firstRow + (row + 0.5) * rowPx + 0.36 * sizePx;
    const foot = firstRow + (row + 1) * rowPx;
    return partOf([
      ...cells.flatMap((cell, index) => {
        const face = faceOfCell(cell, index);
        const text = shortened(cell.text, fit.columns[index]!.width, sizePx, face);
        const look = { sizePx, face, colour: colourOf(cell.style), ...anchorOf(place(index).anchor) };
        return text === '' ? [] : [textAt(place(index).x, baseline, text, look)];
      }),
      ...(row === fit.rows.length - 1 ? [] : [straight(frame.left, foot, right, foot, rule)]),
    ]);
  });
  const note = textBlock(
    { text: fit.note, sizePx: look.text, face: 'sans', colour: theme.softInk },
    frame.right - frame.left,
    1,
  );
  return [
    ...head,
    straight(frame.left, firstRow, right, firstRow, { colour: theme.softInk, widthPx: 1.5 * hairline }),
    ...rows,
    ...note.draw(frame.left, frame.bottom - note.heightPx),
  ];
}

const anchorOf = (anchor: 'start' | 'end') => (anchor === 'end' ? { anchor } : {});

const faceOfCell = ({ strong }: Pick<CardCell, 'strong'>, column: number): 'sans' | 'sansStrong' =>
  strong || column === 0 ? 'sansStrong' : 'sans';

function drawHead(
  { head, unit, style, width }: TableFit['columns'][number],
  { x, anchor }: { x: number; anchor: 'start' | 'end' },
  top: number,
  { sizePx, headPx, hasSamples, hasUnits }: TableFit,
  look: PictureLook,
): SceneNode[] {
  const theme = THEMES[look.theme];
  const { colour, dash } = drawnStyle(style, look.theme);
  const bottom = top + headPx - 0.45 * sizePx;
  const unitRow = hasUnits ? 1.2 * sizePx : 0;
  const lastHead = bottom - unitRow - 0.2 * sizePx;
  const said = { sizePx, face: 'sansStrong', colour, ...anchorOf(anchor) } as const;
  const sample = Math.min(SAMPLE_EM * sizePx, width);
  const sampleLeft = anchor === 'end' ? x - sample : x;
  const sampleY = top + 0.2 * sizePx;
  return [
    ...(hasSamples && style !== 'ink'
      ? [
          straight(sampleLeft, sampleY, sampleLeft + sample, sampleY, {
            colour,
            widthPx: 0.15 * sizePx,
            dash,
          }),
        ]
      : []),
    ...head.map((line, index) => textAt(x, lastHead - (head.length - 1 - index) * 1.2 * sizePx, line, said)),
    ...(unit === ''
      ? []
      : [
          textAt(x, bottom - 0.2 * sizePx, unit, {
            sizePx,
            face: 'sans',
            colour: theme.softInk,
            ...anchorOf(anchor),
          }),
        ]),
  ];
}
