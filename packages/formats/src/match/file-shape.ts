import type { Written } from '../yaml/read-written.ts';
import { air } from './air-shape.ts';
import { combination } from './combination-shape.ts';
import { baseline, fit } from './curve-shape.ts';
import { fuel } from './fuel-shape.ts';
import { group } from './group-shape.ts';
import { compressorMap } from './map-shape.ts';
import { breathing, statedModel, triedCooler } from './model-shape.ts';
import { overSpeed } from './over-speed-shape.ts';
import { quantity, ratio } from './quantity-shape.ts';
import { reachSection } from './reach-shape.ts';
import { list, refuse, type Shape, text, whole, wordOr } from './shape.ts';

/** More what-ifs than anybody lays beside one another. */
const MOST_WHAT_IFS = 24;

const pulley = (about: string): Shape<number> =>
  quantity('length', { allowed: [0.01, 2], example: '85 mm', about });

const WHAT_IF = group(
  {
    name: text('What it is called in the answer.'),
    crankPulleyDiameter: pulley('Another crank pulley.'),
    blowerPulleyDiameter: pulley('Another blower pulley.'),
    stepUp: ratio([0.2, 30], '3.6', 'Another step-up.'),
    cooler: triedCooler,
    weather: air('Another day.'),
    workFactor: ratio(
      [0.2, 5],
      '1.02',
      'On the work of an air mass as it is: 1.02 is 2 % more of it, by mixture or spark.',
    ),
    evaporationCooling: quantity('temperatureDifference', {
      allowed: [0, 150],
      example: '15 K',
      about: 'By which fuel cools the charge before the probe.',
    }),
    fuel: fuel('Another fuel, with what it does by rule of thumb.'),
    breathing,
  },
  { about: 'What is tried on the combination; what is left out stands as it is.' },
);

const BANDS = wordOr(
  { none: null },
  group(
    {
      draws: whole([100, 100_000], 'Sampled matches for a band.'),
      seed: whole([0, 2 ** 31 - 1], 'Seed of the draws: the same gives the same band.'),
    },
    { about: 'How bands are drawn, or none.' },
  ),
);

const VERSION: Shape<1> = {
  schema: { const: 1 },
  read: (value, path, reading) => {
    if (value === 1) return 1;
    const isNewer = typeof value === 'number' && value > 1;
    return isNewer
      ? refuse(
          reading,
          path,
          'schema-version-newer',
          `${value} is newer than this program knows (1). Use a newer Pullbook.`,
        )
      : refuse(
          reading,
          path,
          'schema-version-wrong',
          `"${String(value)}" is not a version. Write "schemaVersion: 1".`,
        );
  },
};

/** The whole of a match file. `written`: where its values stand, for the lines of a sheet in it. */
export function matchFileShape(written: Written, name: string) {
  return group(
    {
      schemaVersion: VERSION,
      name: text('What this match is called.'),
      combination: combination(written, name),
      baseline: baseline(),
      map: compressorMap(),
      weather: air("Air of the match; missing: the baseline's."),
      model: statedModel,
      bands: BANDS,
      fit: fit(),
      whatIf: list(WHAT_IF, MOST_WHAT_IFS),
      overSpeed,
      reach: reachSection,
    },
    { about: MATCH_FILE, needed: ['combination', 'baseline'] },
  );
}

const MATCH_FILE =
  'A supercharger match: a combination with its supercharger, the engine without it, a compressor map, the weather. Quantities are text with their unit; "unknown" is the same as leaving out.';
