import { CORRECTIONS, type CorrectionId } from '@pullbook/core/air';
import { CHANGE_PARTS, type EnquiryAsked } from '@pullbook/core/reach';
import { SIZE_NAMES } from '@pullbook/workshop';
import { z } from 'zod';

const text = z.string().max(2000);
const shown = {
  units: z.enum(['us', 'si']).default('us'),
  decimal: z.enum(['.', ',']).default('.'),
};
const what = z.enum(['peak power', 'power at a speed', 'average power']);
const correction = z.enum(Object.keys(CORRECTIONS) as [CorrectionId, ...CorrectionId[]]);

/** A target of a combination, as text with units; what each may be is the workshop's to say. */
export const reachQuery = z.object({
  power: text.optional(),
  what: what.optional(),
  at: text.optional(),
  window: text.optional(),
  boostCap: text.optional(),
  /** Kinds of change that are left out, with commas between. */
  without: text.optional(),
  correction: text.optional(),
});

/** Every key of a thing: a shape that forgets one does not compile. */
type KeysOf<Whole> = Record<keyof Whole, z.ZodType>;

const asked = z.strictObject({
  power: text,
  what,
  at: text.nullable(),
  window: text.nullable(),
  boostCap: text.nullable(),
  without: z.array(z.enum(CHANGE_PARTS)).max(CHANGE_PARTS.length),
  correction,
} satisfies KeysOf<EnquiryAsked>);

export const enquiryToKeep = z.strictObject({
  combinationId: text,
  asked,
  question: text.optional(),
});

export const enquiriesQuery = z.object({
  ...shown,
  find: text.optional(),
  combination: text.optional(),
  page: z.coerce.number().int().positive().max(100_000).optional(),
});

export const rungToPlan = z.strictObject({ question: text.optional() });

const card = {
  ...shown,
  rung: text.optional(),
  shows: z.enum(['words', 'curves']).optional(),
  format: z.enum(['svg', 'png', 'pdf']).default('svg'),
  size: z.enum(SIZE_NAMES).default('1080p'),
  theme: z.enum(['light', 'dark']).default('light'),
  /** A query has texts; a body the thing itself. */
  ground: z
    .union([z.boolean(), z.enum(['true', 'false']).transform((said) => said === 'true')])
    .default(true),
  privateToo: z
    .union([z.boolean(), z.enum(['true', 'false']).transform((said) => said === 'true')])
    .default(false),
};

/** A card to look at. */
export const cardQuery = z.object({ ...card, download: z.string().optional() });

/** A card that leaves the shop. Figures of a page may be asked with more than a card knows. */
export const cardToLeave = z.object(card);

export const partsQuery = z.object(shown);

/** As a parts file is written; `null`: back to what is usual. */
export const partsWanted = z.strictObject({
  parts: z.record(text, z.unknown()).nullable(),
  stamp: text.optional(),
});
