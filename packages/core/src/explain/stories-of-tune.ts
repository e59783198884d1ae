import { said } from '../remark/index.ts';
import { DOWN, type Foretold, MOVED, SAME_OR_ELSE, type StoryEntry, UP } from './story.ts';

const MOVED_POWER: Foretold = { agrees: ['up', 'down'], contradicts: ['same'] };

/** Mixture and spark: a second change, where they were not meant. */
export const TUNE_STORIES: readonly StoryEntry[] = [
  {
    id: 'mixture',
    text: ({ of }) => {
      const lambda = of('lambda')?.state;
      if (lambda === undefined || lambda === 'same') return said`The mixture may have moved with the change.`;
      return said`The mixture is ${lambda === 'up' ? 'leaner' : 'richer'} than before, which moves power by itself: bring both sides to one mixture.`;
    },
    foretells: {
      power: MOVED_POWER,
      lambda: MOVED,
      boost: SAME_OR_ELSE,
      sparkAdvance: SAME_OR_ELSE,
    },
    decidedBy: ['lambda'],
    beside: true,
    alwaysPossible: true,
  },
  {
    id: 'spark-earlier',
    text: () =>
      said`The spark is earlier, or is pulled back less: more of the pressure falls on the piston's way down.`,
    foretells: {
      power: UP,
      sparkAdvance: UP,
      boost: SAME_OR_ELSE,
      fuelFlow: SAME_OR_ELSE,
      lambda: SAME_OR_ELSE,
    },
    decidedBy: ['sparkAdvance'],
    alwaysPossible: true,
  },
  {
    id: 'spark-later',
    text: () =>
      said`The spark is later, or pulled back for knock: less of the pressure falls on the piston's way down.`,
    foretells: {
      power: DOWN,
      sparkAdvance: DOWN,
      boost: SAME_OR_ELSE,
      fuelFlow: SAME_OR_ELSE,
      lambda: SAME_OR_ELSE,
    },
    decidedBy: ['sparkAdvance'],
    alwaysPossible: true,
  },
];
