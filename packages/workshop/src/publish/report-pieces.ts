import { writeFile } from 'node:fs/promises';
import { publishedName } from './file-names.ts';
import { type Making, type Piece, PLAIN } from './piece.ts';
import { drawnReport } from './report.ts';

/** The customer's report, in every form asked for. */
export async function reportPieces({ book, answer, options, request, stem }: Making): Promise<Piece[]> {
  return request.formats.report.map((format) => ({
    kind: 'report',
    name: publishedName(stem, ['report'], format),
    make: async (path) => {
      await writeFile(path, await drawnReport(book, answer, options, { format, paper: request.paper }));
      return PLAIN;
    },
  }));
}
