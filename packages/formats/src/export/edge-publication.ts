import type { Publication, SaidFigure } from '@pullbook/core/publication';
import { EDGE_UNITS } from './edge-units.ts';

/** A published figure; `value`, `low` and `high` are in `unit`, the inside unit of `kind`. */
export type EdgePublishedFigure = SaidFigure & { unit: string };

/** A publication as `book.json` writes it. */
export type EdgePublication = Omit<Publication, 'figures'> & { figures: EdgePublishedFigure[] };

export function edgeFromPublication({ figures, ...rest }: Publication): EdgePublication {
  return { ...rest, figures: figures.map((one) => ({ ...one, unit: EDGE_UNITS[one.kind].name })) };
}

/** Throws where a list is none or holds nothing in a place: what was published can never be mended in the book. */
export function publicationFromEdge({ figures, ...rest }: EdgePublication): Publication {
  for (const list of ['kinds', 'files', 'pullIds', 'links'] as const) {
    const given: unknown = rest[list];
    if (!Array.isArray(given) || given.some((one) => one == null))
      throw new Error(`publication ${rest.id} has no list of ${list}`);
  }
  return { ...rest, figures: figures.map(({ unit: _, ...figure }) => figure) };
}
