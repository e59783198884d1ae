import type { SectionId } from '../combination/index.ts';
import { said } from '../remark/index.ts';
import { CHARGE_STORIES } from './stories-of-charge.ts';
import { DRIVE_STORIES } from './stories-of-drive.ts';
import { TUNE_STORIES } from './stories-of-tune.ts';
import {
  ALONG_LINE_IN_WORDS,
  DOWN,
  DOWN_NOT_UP,
  SAME,
  SAME_OR_ELSE,
  type StoryEntry,
  UP,
  UP_NOT_DOWN,
} from './story.ts';

/** Where air goes through. */
const BREATHING: readonly SectionId[] = ['heads', 'cam', 'intake', 'exhaust'];

const ALSO = { lambda: SAME_OR_ELSE, sparkAdvance: SAME_OR_ELSE } as const;

/**
 * The stories, in the order in which they go where equally much agrees: what a supercharged V-engine's testers say of power
 * and boost (common practice, no source), as the physics of a compressor on an engine allows it. Which way boost goes when
 * the engine breathes better depends on the slope of the compressor's speed line, so that no direction of it contradicts.
 */
export const STORIES: readonly StoryEntry[] = [
  {
    id: 'boost-regulated',
    family: 'breathing',
    text: () => said`The engine breathes better, and a valve holds the boost: more air at the same pressure.`,
    foretells: { power: UP, boost: SAME, fuelFlow: UP_NOT_DOWN, airFlow: UP_NOT_DOWN, ...ALSO },
    parts: BREATHING,
    charger: ['turbocharger'],
    decidedBy: ['boost'],
  },
  {
    id: 'breathes-better',
    family: 'breathing',
    text: ({ input, of }) => {
      const where = of('crossover')?.state === 'up' ? ' above the crossover' : '';
      const better = said`The engine breathes better${where}: it takes in more air at every stroke`;
      if (input.charger === 'none') return said`${better}.`;
      if (input.lineRuns) return said`${better}. ${ALONG_LINE_IN_WORDS[input.lineRuns]}`;
      if (of('boost')?.state === 'down')
        return said`${better}, so that less of it waits as pressure in the manifold. Boost falls with it where the supercharger's speed line falls; without its map that is not known.`;
      return said`${better}. Where the supercharger's speed line is flat boost stays, left of its peak it rises; without its map that is not known.`;
    },
    foretells: {
      power: UP,
      boost: { agrees: ['down', 'same'], contradicts: [] },
      fuelFlow: UP_NOT_DOWN,
      airFlow: UP_NOT_DOWN,
      impellerSpeed: SAME_OR_ELSE,
      pulleyRatio: SAME_OR_ELSE,
      slip: SAME_OR_ELSE,
      ...ALSO,
    },
    parts: BREATHING,
    boostFollowsLine: true,
    decidedBy: ['boost', 'fuelFlow', 'airFlow'],
  },
  {
    id: 'restriction',
    text: ({ input }) =>
      input.charger === 'none'
        ? said`Something holds the air back: it does not get in or out as before. Late valve events, a valve that floats or a bent pushrod do the same.`
        : said`Something holds the air back: it waits as pressure in the manifold. Late valve events, a valve that floats or a bent pushrod do the same.`,
    foretells: {
      power: DOWN,
      boost: UP_NOT_DOWN,
      fuelFlow: DOWN_NOT_UP,
      airFlow: DOWN_NOT_UP,
      impellerSpeed: SAME_OR_ELSE,
      pulleyRatio: SAME_OR_ELSE,
      ...ALSO,
    },
    decidedBy: ['boost', 'airFlow', 'fuelFlow'],
  },
  ...DRIVE_STORIES,
  ...CHARGE_STORIES,
  ...TUNE_STORIES,
  {
    id: 'restriction-at-flow',
    family: 'breathing',
    text: () =>
      said`The old part held back more the more air went through it: the change gains more under boost than without, beyond the pressure ratio.`,
    foretells: {
      power: UP,
      withoutSupercharger: UP,
      boost: { agrees: ['down', 'same'], contradicts: [] },
      ...ALSO,
    },
    parts: BREATHING,
    charger: ['mechanical', 'turbocharger'],
    decidedBy: ['withoutSupercharger'],
  },
  {
    id: 'tuning-moved-up',
    family: 'breathing',
    text: () =>
      said`The tuning of ducts and valve events moved to higher speeds: lost below the crossover, won above it.`,
    foretells: { crossover: UP, ...ALSO },
    parts: BREATHING,
    decidedBy: ['crossover'],
  },
  {
    id: 'tuning-moved-down',
    family: 'breathing',
    text: () =>
      said`The tuning of ducts and valve events moved to lower speeds: won below the crossover, lost above it.`,
    foretells: { crossover: DOWN, ...ALSO },
    parts: BREATHING,
    decidedBy: ['crossover'],
  },
  {
    id: 'weather-or-standard',
    text: () =>
      said`Weather or standard: the same per cent at every speed is what a correction makes. Bring both sides to one standard, or pull them in one air, before believing in a part.`,
    foretells: { power: { agrees: ['up', 'down'], contradicts: ['same'] }, shape: SAME, correction: UP },
    decidedBy: ['correction'],
  },
  {
    id: 'compression-or-fuel',
    text: () => said`Compression or fuel: the same per cent at every speed, with standard and weather alike.`,
    foretells: {
      power: { agrees: ['up', 'down'], contradicts: ['same'] },
      shape: SAME,
      correction: SAME,
      boost: SAME_OR_ELSE,
      ...ALSO,
    },
    parts: ['shortBlock', 'fuel'],
    decidedBy: ['shape'],
  },
  {
    id: 'not-the-restriction',
    text: () =>
      said`The changed part did not hold the engine back: look for the narrowest place among heads, cam, intake, exhaust, fuel and supercharger.`,
    foretells: { power: SAME, boost: SAME, fuelFlow: SAME, airFlow: SAME, ...ALSO },
    parts: [
      'shortBlock',
      'heads',
      'cam',
      'intake',
      'exhaust',
      'fuelSystem',
      'supercharger',
      'cooler',
      'accessories',
      'ignition',
    ],
    decidedBy: ['boost', 'fuelFlow', 'airFlow'],
  },
];
