import type { MoveId, Moves } from './model.ts';
import { AS_IT_IS, MOVES } from './moves.ts';
import { OWN_MOVES } from './own-moves.ts';

/** All that is searched stands in one row: what all share in the order of `MOVES`, then each combination's own in that of `OWN_MOVES`. */
export function placeOfOwn(combination: number, id: MoveId): number | null {
  const place = (OWN_MOVES as readonly MoveId[]).indexOf(id);
  return place < 0 ? null : MOVES.length + combination * OWN_MOVES.length + place;
}

/** What acts on a combination's pulls: the shared and its own; `null`: on those of one that was not fitted. */
export function movesOf(at: readonly number[], combination: number | null): Moves {
  return Object.fromEntries(
    MOVES.map((id, place) => {
      const own = combination === null ? null : placeOfOwn(combination, id);
      return [id, AS_IT_IS[id] + at[place]! + (own === null ? 0 : at[own]!)];
    }),
  ) as Moves;
}
