import { z } from 'zod';

const text = z.string().max(2000);
const shown = {
  units: z.enum(['us', 'si']).default('us'),
  decimal: z.enum(['.', ',']).default('.'),
};

/** What is to be planned; what the numbers may be is the workshop's to say. */
const asked = {
  gain: text.optional(),
  odds: text.optional(),
  looks: z.coerce.number().optional(),
  maximumPulls: z.coerce.number().optional(),
};

export const planQuery = z.object({ ...shown, ...asked });

export const sheetQuery = planQuery.extend({ paper: z.enum(['a4', 'letter']).optional() });

export const planToKeep = z.strictObject({
  ...asked,
  /** `null`: back to the lines as worked out. */
  stopCriteria: z
    .array(z.strictObject({ id: text, label: text, limit: text, source: text }))
    .max(60)
    .nullish(),
  notes: text.optional(),
  stamp: text.optional(),
});

export const planForgotten = z.strictObject({ stamp: text.optional() });

/** `fitted`: only where this combination is the one on the brake. */
export const riskQuery = z.object({ ...shown, fitted: text.optional() });
