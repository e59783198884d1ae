import { z } from 'zod';

const text = z.string().max(20_000);

const cellFields = {
  brake: text.nullish(),
  altitude: text.nullish(),
  momentOfInertia: text.nullish(),
  notes: text.nullish(),
};

/** What was looked at, so that a change made meanwhile is not overwritten unseen. */
const stamp = text.optional();

/** What a setting may be is the workshop's to say, in words a person can act on. */
export const settingsChange = z.looseObject({ stamp });

export const newCell = z.strictObject({ name: text, ...cellFields });

export const cellChange = z.strictObject({
  change: z.strictObject({ name: text.optional(), ...cellFields }),
  reason: text.default(''),
  stamp,
});

export const newInstrument = z.strictObject({ name: text, measures: text, serial: text.nullish(), stamp });

export const instrumentTakenOut = z.strictObject({ reason: text, stamp });

export const newCalibration = z.strictObject({
  day: text,
  validUntil: text.nullish(),
  how: text.nullish(),
  found: text.nullish(),
  by: text.nullish(),
  stamp,
});

export const audienceChange = z.strictObject({
  who: text.optional(),
  notBefore: text.nullish(),
  reason: text.default(''),
  stamp,
});

/** What the figures may be is the workshop's to say. */
export const newPrediction = z.strictObject({
  key: text,
  gain: text.nullish(),
  peakPower: text.nullish(),
  low: text,
  high: text,
  basis: text,
});
