import type { ReachBundle } from '../reach-model.ts';
import { withGaps } from '../with-gaps.ts';

/** A bundle as it came over the wire, with its gaps, so that a page may search by it. */
export const revivedReach = (bundle: ReachBundle): ReachBundle => withGaps(bundle);
