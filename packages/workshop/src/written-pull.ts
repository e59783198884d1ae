import { type CarriedCorrection, OPEN_AUDIENCE, PLAIN_TREATMENT, type Pull } from '@pullbook/core/pull';
import type { PullDetails } from './edge/pull-details.ts';
import { withSaid } from './edge/text-fields.ts';
import { treated } from './treatment.ts';

/** All of a pull that is written down beside its figures. */
type WrittenPull = Omit<Pull, 'id' | 'name' | 'form' | 'channels' | 'summary' | 'origin' | 'fileHash'>;

/** What was said of a new pull; the rest is not known. `carried`: what its figures are in, where nothing was said. */
export function writtenPull(details: PullDetails, carried: CarriedCorrection): WrittenPull {
  const { setUpWords: _, name: __, sweep, treatment, tune, places, ...said } = details;
  return {
    combinationId: null,
    setUpId: null,
    sessionId: null,
    orderInSession: null,
    recordedAt: null,
    cell: null,
    operator: null,
    weather: null,
    carried,
    notes: [],
    events: [],
    outcome: 'completed',
    invented: false,
    ...said,
    tune: withSaid({}, tune),
    places: withSaid({}, places),
    sweep: { momentOfInertia: null, inertiaCompensated: 'unknown', ...sweep },
    treatment: treated(PLAIN_TREATMENT, treatment ?? {}),
    audience: OPEN_AUDIENCE,
  };
}
