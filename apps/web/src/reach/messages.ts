import type { ReachInput, ReachParts } from '@pullbook/core/reach';

export type PartName = keyof ReachParts;

/** What the page gives its workers: first what is searched by, then parts of the search, one after the other. */
export type SearchOrder =
  | { input: ReachInput }
  | { [Name in PartName]: { name: Name; given: ReachParts[Name]['given'] } }[PartName];

export type SearchNews = { output: ReachParts[PartName]['gives'] } | { trouble: string };
