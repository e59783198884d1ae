import type { DemoPublication } from './model.ts';
import { reading } from './weather.ts';

/** One still was shown with the barometer of Pull 12 written down 2 kPa too low: an erratum. */
export const PUBLISHED: DemoPublication[] = [
  {
    ref: 'publication-pulley',
    trialRef: 'trial-pulley',
    links: [{ where: 'Hill-climb club, spring evening', day: '2026-03-20', note: 'on the wall' }],
    miswritten: {
      pullRef: 'pull-12',
      weather: reading(96.8, 24.1, 41),
      reason: 'Barometer written down as 96.8 kPa; the cell’s own sheet says 98.8 kPa.',
    },
    at: '2026-03-15T18:30:00+01:00',
  },
];
