import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { STEP_IDS } from '@pullbook/core/trial';
import { z } from 'zod';
import { RequestTrouble } from './trouble.ts';

const meaning = z.enum(Object.keys(MEANINGS) as [ChannelMeaning, ...ChannelMeaning[]]);
const text = z.string().max(20_000);
/** A sheet may carry tables of a thousand points. */
const sheet = z.string().max(500_000);
const rangeRpm = z.tuple([z.number().positive(), z.number().positive()]);

const weather = z.strictObject({
  pressure: text,
  temperature: text,
  humidity: text.nullish(),
  altitude: text.nullish(),
});

/** `null`: cleared. */
const tune = z.strictObject({
  sparkAdvance: text.nullish(),
  targetLambda: text.nullish(),
  jets: text.nullish(),
  fuelPressure: text.nullish(),
  coolerWater: text.nullish(),
  fuelBatch: text.nullish(),
  notes: text.nullish(),
});

const places = z.strictObject({
  boostTap: text.nullish(),
  chargeProbe: text.nullish(),
  inletProbe: text.nullish(),
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
  orderInSession: z.int().positive().nullish(),
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
  /** `last` or the id of a pull: what is not said is as in it. */
  like: text.optional(),
  readAnew: z.boolean().optional(),
});

export const summaryPull = pullDetails.extend({
  summary: z.strictObject({
    peakPower: text.nullish(),
    peakPowerRpm: text.nullish(),
    peakTorque: text.nullish(),
    peakTorqueRpm: text.nullish(),
  }),
  origin: text,
  like: text.optional(),
});

/** What was looked at when the change was made; without it the change goes over whatever stands. */
const stamp = text.optional();

export const pullAmendment = z.strictObject({ amendment: pullDetails, reason: text, stamp });

const trialCombinations = z.array(z.strictObject({ combinationId: text, shortName: text }));
/** By the key of the combination; `null`: told by the parts that changed. */
const takenApart = z.record(text, z.boolean().nullable()).optional();

export const newTrial = z.strictObject({
  question: text,
  kind: z.enum(['comparison', 'survey']).default('comparison'),
  combinations: trialCombinations,
  takenApart,
  pullIds: z.array(text).optional(),
  correction: text.optional(),
});

export const trialEdit = z.strictObject({
  question: text.optional(),
  kind: z.enum(['comparison', 'survey']).optional(),
  stamp,
  correction: text.optional(),
  averagesWindowRpm: rangeRpm.nullish(),
  remark: text.optional(),
  combinations: trialCombinations.optional(),
  takenApart,
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
  /** How it is told step by step; what it may be is the workshop's to say, in words a person can act on. */
  runningOrder: z
    .strictObject({
      steps: z
        .array(
          z.strictObject({
            id: z.enum(STEP_IDS),
            isShown: z.boolean(),
            title: text.nullable(),
            seconds: z.number().nullable(),
          }),
        )
        .max(100),
      speed: z.number(),
    })
    .nullish(),
  reason: text.default(''),
});

export const newCombination = z.strictObject({
  sheetText: sheet,
  engineId: text.optional(),
  engineName: text.optional(),
  madeFromId: text.optional(),
  packageIds: z.array(text).optional(),
});

/** A sheet that is looked at and not kept. */
export const sheetToLookAt = z.strictObject({ sheetText: sheet, madeFromId: text.optional() });

export const newPackage = z.strictObject({ name: text, covers: z.array(text) });

export const combinationAmendment = z.strictObject({ sheetText: sheet, reason: text, stamp });

export const engineChange = z.strictObject({
  name: text.optional(),
  buildRevision: text.optional(),
  notes: text.optional(),
  reason: text,
  stamp,
});

export const undoing = z.strictObject({ uid: text.nullable() });

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

/** A trial's page may be asked for before its match is made. */
export const trialPageQuery = z.object({ early: z.literal('1').optional() });

/** How a recording is looked at: over what, how much of that axis, and which channels by their ids. */
export const recordedQuery = z.object({
  units,
  decimal,
  over: z.enum(['time', 'speed']).default('time'),
  low: z.coerce.number().optional(),
  high: z.coerce.number().optional(),
  channels: z.string().optional(),
});

export const airQuery = z.object({
  pressure: z.string(),
  temperature: z.string(),
  humidity: z.string().optional(),
  altitude: z.string().optional(),
});

const page = z.coerce.number().int().positive().max(1_000_000).optional();
const size = z.coerce.number().int().positive().max(500).optional();
const yesOrNo = z
  .enum(['yes', 'no'])
  .transform((said) => said === 'yes')
  .optional();

/** A part of the query that may stand several times. */
const several = z
  .union([text, z.array(text).max(500)])
  .transform((given) => (typeof given === 'string' ? [given] : given))
  .optional();

/** Which pulls of the book, as text. */
export const pullsQuery = z.object({
  units,
  decimal,
  find: text.optional(),
  id: several,
  combination: several,
  engine: text.optional(),
  cell: text.optional(),
  fromDay: text.optional(),
  toDay: text.optional(),
  powerFrom: text.optional(),
  powerTo: text.optional(),
  boosted: z.enum(['yes', 'no', 'unknown']).optional(),
  outcome: z.enum(['completed', 'aborted']).optional(),
  inTrial: yesOrNo,
  invented: yesOrNo,
  sort: z.enum(['newest', 'power', 'name']).optional(),
  page,
  size,
});

export const trialsQuery = z.object({ units, decimal, find: text.optional(), page, size });

export const historyQuery = z.object({
  units,
  decimal,
  before: z.coerce.number().int().positive().optional(),
  subject: text.optional(),
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
