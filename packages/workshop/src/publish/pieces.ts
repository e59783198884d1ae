import type { PublicationKind } from '@pullbook/core/publication';
import type { Remark } from '@pullbook/core/remark';
import { bundlePieces } from './bundle-pieces.ts';
import { clipPieces } from './clip-pieces.ts';
import type { Making, Piece } from './piece.ts';
import { reportPieces } from './report-pieces.ts';
import { stillPieces } from './still-pieces.ts';
import { tablePieces } from './table-pieces.ts';

type Pieces = (making: Making, remarks: Remark[]) => Promise<Piece[]>;

/** In this order: what takes seconds before what takes a minute. */
const BY_KIND: [PublicationKind, Pieces][] = [
  ['still', stillPieces],
  ['report', reportPieces],
  ['table', tablePieces],
  ['bundle', bundlePieces],
  ['clip', clipPieces],
];

/** Everything that is asked for, one file after the other. `remarks` takes what is said of what cannot be made as asked. */
export async function* piecesOf(making: Making, remarks: Remark[]): AsyncGenerator<Piece> {
  for (const [kind, pieces] of BY_KIND)
    if (making.request.kinds.includes(kind)) yield* await pieces(making, remarks);
}
