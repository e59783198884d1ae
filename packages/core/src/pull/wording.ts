import { figureOf } from '../quantity/index.ts';
import { type Figure, piecesOf, type Said, said } from '../remark/index.ts';
import type { Cut } from './model.ts';

/** Row numbers as people count them, from 1: `rows 1-83`. */
export const rowsText = (fromRow: number, toRow: number): string =>
  fromRow === toRow ? `row ${fromRow + 1}` : `rows ${fromRow + 1}-${toRow + 1}`;

/** A lag without its sign and with no digit too many: `0.3 s`. */
export function lagFigure(lagS: number): Figure {
  const short = Number(Math.abs(lagS).toPrecision(3));
  const decimals = (String(short).split('.')[1] ?? '').length;
  return figureOf(short, 'time', { decimals, plain: `${short} s` });
}

/** Rows that do not count, with the reason. */
export function cutOf(fromRow: number, toRow: number, why: Said | string): Cut {
  const reason = said`${rowsText(fromRow, toRow)}: ${why}`;
  return { fromRow, toRow, reason: reason.text, ...piecesOf(reason) };
}
