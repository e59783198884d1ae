import type { PullAmendment, PullHead } from './model.ts';

const AMENDABLE: Record<keyof PullAmendment, true> = {
  name: true,
  combinationId: true,
  setUpId: true,
  sessionId: true,
  orderInSession: true,
  recordedAt: true,
  cell: true,
  operator: true,
  weather: true,
  carried: true,
  sweep: true,
  tune: true,
  places: true,
  notes: true,
  events: true,
  outcome: true,
  treatment: true,
  audience: true,
};

/** Both sides of an amendment: the fields it names, as they were and as they become. Throws for any other field. */
export function amendmentSides(
  head: PullHead,
  amendment: PullAmendment,
): { before: PullAmendment; after: PullAmendment } {
  const before: Record<string, unknown> = {};
  const after: Record<string, unknown> = {};
  for (const [field, value] of Object.entries(amendment)) {
    if (!Object.hasOwn(AMENDABLE, field)) throw new Error(`"${field}" of a pull cannot be amended`);
    if (value === undefined) continue;
    before[field] = head[field as keyof PullAmendment];
    after[field] = value;
  }
  return { before, after };
}
