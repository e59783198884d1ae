import { CORRECTIONS, type CorrectionId } from '@pullbook/core/air';
import { type CombinationSheet, readSheet, sheetSchema } from '@pullbook/core/combination';
import { CHANGE_PARTS } from '@pullbook/core/reach';
import { parts } from '../parts/parts-shape.ts';
import { group, isRecord } from './group-shape.ts';
import { compressorMap } from './map-shape.ts';
import type { WrittenReach } from './model.ts';
import { made } from './model-shape.ts';
import { quantity } from './quantity-shape.ts';
import { inWords, list, refuse, type Shape, whole, word } from './shape.ts';

const SPEED = (about: string) =>
  quantity('engineSpeed', { allowed: [100, 30_000], example: '6000 rpm', about });

/** Sections of a sheet that make another supercharger on this engine. */
const SECTIONS = ['supercharger', 'drive', 'cooler'] as const;

const sections: Shape<CombinationSheet['sections']> = {
  get schema() {
    const { properties } = sheetSchema() as { properties: Record<string, unknown> };
    return {
      type: 'object',
      properties: Object.fromEntries(SECTIONS.map((id) => [id, properties[id]])),
      additionalProperties: false,
    };
  },
  read: (value, path, reading) => {
    const read = readSheet({ schemaVersion: 1, name: 'Another supercharger', ...(value as object) });
    if (read.ok) return read.value.sections;
    const [first] = read.remarks;
    return refuse(reading, path, first!.code, first!.message);
  },
};

/** A supercharger that could be fitted in place of the one that is there, or on an engine that has none. */
const SUPERCHARGER: Shape<WrittenReach['superchargers'][0]> = {
  get schema() {
    return {
      type: 'object',
      description: 'Another supercharger that could be fitted: lines of a sheet, and its map.',
      properties: {
        name: { type: 'string' },
        ...(sections.schema as { properties: Record<string, never> }).properties,
        map: compressorMap().schema,
      },
      required: ['name', 'supercharger'],
      additionalProperties: false,
    };
  },
  read: (value, path, reading) => {
    if (!isRecord(value))
      return refuse(reading, path, 'match-group', `${inWords(value)} stands where a supercharger is due.`);
    const { name, map, ...lines } = value;
    if (typeof name !== 'string' || !isRecord(lines.supercharger))
      return refuse(
        reading,
        path,
        'match-missing',
        'needs a name and the lines of its supercharger, such as "{ name: Larger unit, supercharger: { type: centrifugal, stepUp: 3.6, … }, map: { file: larger.csv } }".',
      );
    const strange = Object.keys(lines).find((key) => !(SECTIONS as readonly string[]).includes(key));
    if (strange !== undefined)
      return refuse(
        reading,
        [...path, strange],
        'match-key-not-known',
        `not known here. Known are name, ${SECTIONS.join(', ')}, map.`,
      );
    const sheet = sections.read(lines, path, reading);
    const compressor = map === undefined ? null : compressorMap().read(map, [...path, 'map'], reading);
    return sheet === undefined || compressor === undefined
      ? undefined
      : { name, sections: sheet, map: compressor };
  },
};

const PARTS: Shape<NonNullable<WrittenReach['parts']>> = {
  get schema() {
    return {
      anyOf: [{ type: 'string', description: 'A parts list in a file beside this one.' }, parts.schema],
    };
  },
  read: (value, path, reading) => {
    if (typeof value === 'string' && value.trim() !== '') return { from: 'file', path: value.trim() };
    const lists = parts.read(value, path, reading);
    return lists && { from: 'written', lists };
  },
};

/** What is asked of a match, beside it: a target, and what may be changed for it. `pullbook match` reads it and leaves it. */
export const reachSection: Shape<WrittenReach> = made(
  group(
    {
      power: quantity('power', { allowed: [1, 2e7], example: '520 hp', about: 'What is asked for.' }),
      at: SPEED('At this engine speed; missing: the highest at any.'),
      window: group(
        { from: SPEED('From which.'), to: SPEED('To which.') },
        { about: 'The average between two engine speeds.', needed: ['from', 'to'] },
      ),
      boostCap: quantity('gaugePressure', {
        allowed: [0, 1e6],
        example: '10 psi',
        about: 'That may not be passed.',
      }),
      correction: word(
        Object.keys(CORRECTIONS) as CorrectionId[],
        'Standard of the power; missing: as observed in the air of the match.',
      ),
      without: list(word(CHANGE_PARTS, 'A kind of change that is left out.'), CHANGE_PARTS.length),
      mostChanges: whole(
        [1, 4],
        'How many changes one way may have, beside those that follow of themselves.',
      ),
      draws: whole([100, 20_000], 'Sampled matches for a band.'),
      seed: whole([0, 2 ** 31 - 1], 'Seed of the draws.'),
      parts: PARTS,
      superchargers: list(SUPERCHARGER, 12),
      speedLimits: list(SPEED('At which the engine may be stopped instead.'), 12),
      lambda: quantity('ratio', { allowed: [0.5, 1.3], example: '0.85', about: 'At full load.' }),
      thresholds: thresholds(),
    },
    { about: 'What the engine shall make, and what may be changed for it.' },
  ),
  ({ window, parts: written = null, ...said }, refused) => {
    if (said.at !== undefined && window !== undefined)
      return refused(
        'gives a speed (at) and a window. Keep one of the two, or neither for the highest power.',
      );
    if (window !== undefined && !((window.from ?? 0) < (window.to ?? 0)))
      return refused('its window goes from the lower engine speed to the higher.');
    const names = (said.superchargers ?? []).map(({ name }) => name.trim().toLowerCase());
    const twice = names.find((name, place) => names.indexOf(name) < place);
    if (twice !== undefined)
      return refused(
        `names two superchargers "${twice}". Give each a name of its own, so that their ways can be told apart.`,
      );
    return {
      power: said.power ?? null,
      atRpm: said.at ?? null,
      windowRpm: window?.from === undefined || window.to === undefined ? null : [window.from, window.to],
      boostCap: said.boostCap ?? null,
      correction: said.correction ?? null,
      without: said.without ?? [],
      mostChanges: said.mostChanges ?? null,
      draws: said.draws ?? null,
      seed: said.seed ?? null,
      parts: written,
      superchargers: said.superchargers ?? [],
      speedLimits: said.speedLimits ?? null,
      lambda: said.lambda ?? null,
      thresholds: said.thresholds ?? {},
    };
  },
);

/** Thresholds of rules by their ids, as text with units: they are looked at where the rules are known. */
function thresholds(): Shape<Record<string, string>> {
  return {
    schema: {
      type: 'object',
      description: 'Thresholds of the rules in place of the usual ones: "V17.duty": 90 %.',
      additionalProperties: { type: ['string', 'number'] },
    },
    read: (value, path, reading) => {
      if (!isRecord(value))
        return refuse(
          reading,
          path,
          'match-group',
          `${inWords(value)} stands where thresholds are due: { "V17.duty": 90 % }.`,
        );
      return Object.fromEntries(Object.entries(value).map(([id, one]) => [id, String(one)]));
    },
  };
}
