import { z } from 'zod';

const text = z.string().max(2000);

/** `null`: as the catalogue has it. */
export const thresholdChange = z.strictObject({ value: text.nullable() });

/** Which thing a rule is silenced for; what the reason may be is the workshop's to say. */
export const silencing = z.strictObject({
  kind: z.enum(['pull', 'trial', 'combination', 'session']),
  id: text,
  reason: text.default(''),
});
