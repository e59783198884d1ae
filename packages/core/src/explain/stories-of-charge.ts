import { said } from '../remark/index.ts';
import { ALONG_LINE_IN_WORDS, DOWN, SAME, SAME_OR_ELSE, type StoryEntry, UP } from './story.ts';

const CHARGED = ['mechanical', 'turbocharger'] as const;

/** Pressure and temperature of the charge. */
export const CHARGE_STORIES: readonly StoryEntry[] = [
  {
    id: 'supercharger-fitted',
    text: () => said`The supercharger presses more air into every stroke.`,
    foretells: {
      power: UP,
      boost: UP,
      fuelFlow: { agrees: ['up'], contradicts: ['down', 'same'] },
      airFlow: UP,
      chargeTemperature: { agrees: ['up'], contradicts: [] },
    },
    charger: ['fitted'],
    decidedBy: ['boost', 'fuelFlow', 'airFlow'],
  },
  {
    id: 'supercharger-taken-off',
    text: () => said`Without the supercharger less air goes into every stroke.`,
    foretells: {
      power: DOWN,
      boost: DOWN,
      fuelFlow: { agrees: ['down'], contradicts: ['up', 'same'] },
      airFlow: DOWN,
      chargeTemperature: { agrees: ['down'], contradicts: [] },
    },
    charger: ['taken-off'],
    decidedBy: ['boost', 'fuelFlow', 'airFlow'],
  },
  {
    id: 'cooler',
    text: ({ input: { lineRuns } }) =>
      lineRuns
        ? said`The cooler makes the charge denser: more air goes in. ${ALONG_LINE_IN_WORDS[lineRuns]}`
        : said`The cooler makes the charge denser: more air at less pressure. Boost falls with it where the supercharger's speed line falls; without its map that is not known.`,
    foretells: {
      power: UP,
      chargeTemperature: DOWN,
      boost: { agrees: ['down', 'same'], contradicts: [] },
      fuelFlow: { agrees: ['up'], contradicts: ['down'] },
      pulleyRatio: SAME_OR_ELSE,
    },
    parts: ['cooler'],
    boostFollowsLine: true,
    charger: CHARGED,
    decidedBy: ['chargeTemperature'],
  },
  {
    id: 'cooler-charge',
    text: () =>
      said`The charge was cooler on the day, by ice, water or cell air: denser air, not another engine.`,
    foretells: {
      power: UP,
      chargeTemperature: DOWN,
      boost: { agrees: ['down', 'same'], contradicts: ['up'] },
      fuelFlow: { agrees: ['up'], contradicts: ['down'] },
    },
    charger: CHARGED,
    decidedBy: ['chargeTemperature'],
    beside: true,
  },
  {
    id: 'pressure-fell',
    text: () =>
      said`As much air at less pressure: it is cooler, or the loss of pressure moved to before the tap. It is no loss of air.`,
    foretells: {
      power: SAME,
      boost: DOWN,
      fuelFlow: SAME,
      airFlow: SAME,
      chargeTemperature: { agrees: ['down'], contradicts: ['up'] },
    },
    charger: CHARGED,
    decidedBy: ['boost'],
  },
  {
    id: 'heat-soak',
    text: () =>
      said`Heat soak: the intake, the supercharger or the cooler was warmer. Wait longer, or with new ice, and pull again.`,
    foretells: {
      power: DOWN,
      chargeTemperature: UP,
      chargeTrend: { agrees: ['up'], contradicts: [] },
      trend: { agrees: ['down'], contradicts: ['up'] },
      boost: { agrees: ['same', 'down'], contradicts: ['up'] },
    },
    decidedBy: ['chargeTemperature'],
  },
  {
    id: 'soaking-on',
    text: () =>
      said`Heat soak from pull to pull: each starts with a warmer charge than the one before it. Wait longer, or with new ice, and pull again.`,
    foretells: {
      power: DOWN,
      chargeTrend: UP,
      trend: { agrees: ['down'], contradicts: ['up'] },
      boost: { agrees: ['same', 'down'], contradicts: ['up'] },
    },
    decidedBy: ['chargeTrend'],
  },
];
