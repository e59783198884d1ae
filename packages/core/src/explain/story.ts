import type { SectionId } from '../combination/index.ts';
import type { Said } from '../remark/index.ts';
import type { About, ExplainInput, Observation, State } from './observation.ts';

/** What a story foretells of one observation. A state in neither list says nothing about it. */
export interface Foretold {
  agrees: readonly State[];
  contradicts: readonly State[];
}

/** A reason that power moved, as data. */
export interface StoryEntry {
  id: string;
  text: (facts: Facts) => Said;
  foretells: Partial<Record<About, Foretold>>;
  /** Parts of which one must have changed. Missing: any or none. */
  parts?: readonly SectionId[];
  /** Missing: with and without a supercharger. */
  charger?: readonly ExplainInput['charger'][];
  /** One of these must have been seen as foretold before it may be the likeliest; one that contradicts ends the story. */
  decidedBy: readonly About[];
  /** It may be at work beside another, so that the other outweighs what it foretells. */
  beside?: true;
  /** More air goes in: which way boost goes is how the supercharger's speed line runs, where a match says it. */
  boostFollowsLine?: true;
  /** Stories of one family are no alternatives to each other. */
  family?: 'breathing';
  /** It cannot be excluded by anything but its own measurement. */
  alwaysPossible?: true;
}

/** What a story's sentence may speak of. */
export interface Facts {
  input: ExplainInput;
  of: (about: About) => Observation | undefined;
}

export const UP: Foretold = { agrees: ['up'], contradicts: ['same', 'down'] };
export const DOWN: Foretold = { agrees: ['down'], contradicts: ['same', 'up'] };
export const SAME: Foretold = { agrees: ['same'], contradicts: ['up', 'down'] };
export const MOVED: Foretold = { agrees: ['up', 'down'], contradicts: ['same'] };
/** Agrees where it is so; otherwise another thing moved too, which does not speak against it. */
export const SAME_OR_ELSE: Foretold = { agrees: ['same'], contradicts: [] };
export const UP_NOT_DOWN: Foretold = { agrees: ['up'], contradicts: ['down'] };
export const DOWN_NOT_UP: Foretold = { agrees: ['down'], contradicts: ['up'] };

/** What more air does to boost, by how the speed line runs. */
export const BOOST_ALONG_LINE = {
  falls: { agrees: ['down'], contradicts: ['up'] },
  flat: { agrees: ['same'], contradicts: [] },
  rises: { agrees: ['up'], contradicts: ['down'] },
} as const satisfies Record<string, Foretold>;

/** The same in words, after what makes more air go in. */
export const ALONG_LINE_IN_WORDS = {
  falls: "By the match the supercharger's speed line falls there, so that boost falls with it.",
  flat: "By the match the supercharger's speed line is flat there, so that boost stays.",
  rises: "By the match the engine works left of the speed line's peak, so that boost rises with it.",
} as const;
