import type { MatchBands } from '@pullbook/core/airpath';
import type { MatchBundle } from '../match-model.ts';
import { withGaps } from '../with-gaps.ts';

/**
 * A bundle as it came over the wire, with its gaps.
 *
 * @example revivedBundle(JSON.parse(text))
 */
export const revivedBundle = (bundle: MatchBundle): MatchBundle => withGaps(bundle);

/** The same of bands. */
export const revivedBands = (bands: MatchBands): MatchBands => withGaps(bands);
