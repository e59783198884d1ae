import type { Ladder, LadderRung, ReachInput, Screened, WhatIsLeft } from '@pullbook/core/reach';

/** The parts of a search, what each is given and what it gives. */
export interface SearchParts {
  screen: { given: { part: number; of: number }; gives: Screened };
  ladder: { given: { screened: Screened[]; isWhole: boolean }; gives: Ladder };
  band: { given: { rung: LadderRung }; gives: LadderRung };
  left: { given: { place: number }; gives: WhatIsLeft | null };
}

export type PartName = keyof SearchParts;

/** What the page gives its workers: first what is searched by, then parts of the search, one after the other. */
export type SearchOrder =
  | { input: ReachInput }
  | { [Name in PartName]: { name: Name; given: SearchParts[Name]['given'] } }[PartName];

export type SearchNews = { output: SearchParts[PartName]['gives'] } | { trouble: string };
