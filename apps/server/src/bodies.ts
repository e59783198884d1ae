import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { z } from 'zod';
import { RequestTrouble } from './trouble.ts';

const meaning = z.enum(Object.keys(MEANINGS) as [ChannelMeaning, ...ChannelMeaning[]]);
const text = z.string().max(20_000);
const rangeRpm = z.tuple([z.number().positive(), z.number().positive()]);

const weather = z.strictObject({
  pressure: text,
  temperature: text,
  humidity: text.nullish(),
  altitude: text.nullish(),
});

const tune = z.strictObject({
  sparkAdvance: text.optional(),
  targetLambda: text.optional(),
  jets: text.optional(),
  fuelPressure: text.optional(),
  notes: text.optional(),
});

const places = z.strictObject({
  boostTap: text.optional(),
  chargeProbe: text.optional(),
  inletProbe: text.optional(),
});

/** What the numbers may be is the workshop's to say, in words a person can act on. */
const treatment = z.strictObject({
  lagsS: z.record(text, z.number()).optional(),
  windowRpm: z.tuple([z.number(), z.number()]).nullish(),
  binWidthRpm: z.number().nullish(),
  addInertia: z.boolean().optional(),
});

/** What is written down about a pull, text with units. */
export const pullDetails = z.strictObject({
  name: text.optional(),
  combinationId: text.nullish(),
  setUp: text.nullish(),
  cell: text.nullish(),
  operator: text.nullish(),
  recordedAt: text.nullish(),
  weather: weather.nullish(),
  carried: z.strictObject({ standard: text, factor: z.number().nullish() }).optional(),
  momentOfInertia: text.nullish(),
  inertiaCompensated: z.enum(['yes', 'no', 'unknown']).optional(),
  tune: tune.optional(),
  places: places.optional(),
  notes: text.optional(),
  outcome: z.enum(['completed', 'aborted']).optional(),
  treatment: treatment.optional(),
  events: z
    .array(z.strictObject({ engineSpeed: text.nullish(), text }))
    .max(1000)
    .optional(),
});

export const importDetails = pullDetails.extend({
  mapping: z
    .array(z.strictObject({ index: z.int().nonnegative(), meaning: meaning.nullable(), unit: text }))
    .optional(),
});

export const summaryPull = pullDetails.extend({
  summary: z.strictObject({
    peakPower: text.nullish(),
    peakPowerRpm: text.nullish(),
    peakTorque: text.nullish(),
    peakTorqueRpm: text.nullish(),
  }),
  origin: text,
});

export const pullAmendment = z.strictObject({ amendment: pullDetails, reason: text });

const trialCombinations = z.array(z.strictObject({ combinationId: text, shortName: text }));

export const newTrial = z.strictObject({
  question: text,
  kind: z.enum(['comparison', 'survey']).default('comparison'),
  combinations: trialCombinations,
  pullIds: z.array(text).optional(),
  correction: text.default('sae-j1349'),
});

export const trialEdit = z.strictObject({
  question: text.optional(),
  correction: text.optional(),
  averagesWindowRpm: rangeRpm.nullish(),
  remark: text.optional(),
  combinations: trialCombinations.optional(),
  pulls: z
    .array(
      z.strictObject({
        pullId: text,
        key: text.optional(),
        role: z.enum(['counted', 'rejected', 'warm-up', 'left out']),
        reason: text.nullish(),
      }),
    )
    .optional(),
  reason: text.default(''),
});

export const newCombination = z.strictObject({
  sheetText: text,
  engineId: text.optional(),
  engineName: text.optional(),
  madeFromId: text.optional(),
  packageIds: z.array(text).optional(),
});

export const newPackage = z.strictObject({ name: text, covers: z.array(text) });

export const combinationAmendment = z.strictObject({ sheetText: text, reason: text });

const units = z.enum(['us', 'si']).default('us');
const decimal = z.enum(['.', ',']).default('.');
const rpm = z.coerce.number().positive().max(50_000).optional();

/** How figures are shown, and what is only looked at. */
export const lookingQuery = z.object({
  units,
  decimal,
  correction: z.string().optional(),
  from: rpm,
  to: rpm,
});

export const stillQuery = lookingQuery.extend({
  format: z.enum(['svg', 'png']).default('svg'),
  size: z.enum(['1080p', '4k']).default('1080p'),
  theme: z.enum(['light', 'dark']).default('light'),
  ground: z.enum(['true', 'false']).default('true'),
  download: z.string().optional(),
});

export const airQuery = z.object({
  pressure: z.string(),
  temperature: z.string(),
  humidity: z.string().optional(),
  altitude: z.string().optional(),
});

/** What was sent, checked against its shape; a wrong one is refused with every field that is wrong. */
export function shaped<Schema extends z.ZodType>(schema: Schema, sent: unknown): z.output<Schema> {
  const checked = schema.safeParse(sent);
  if (checked.success) return checked.data;
  const faults = checked.error.issues.map(
    (issue) => `${issue.path.join('.') || 'request'}: ${issue.message}`,
  );
  throw new RequestTrouble(400, 'wrong-shape', `The request cannot be used. ${faults.join('; ')}.`);
}
