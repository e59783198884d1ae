import type { Said } from '../remark/index.ts';

/** One observation a story rests on, or that speaks against it. */
export interface Evidence {
  /** `boost`, `fuelFlow`, `chargeTemperature`, `lambda`, `sparkAdvance`, `impellerSpeed`, `parts`, `trend`, … */
  about: string;
  /** `Boost 1.1 psi lower at the top, same tap.` */
  text: Said;
  speaks: 'for' | 'against';
}

/** A likely reason for what the power did. */
export interface Story {
  /** `breathes-better`, `belt-slip`, `cooler`, `heat-soak`, … */
  id: string;
  text: Said;
  evidence: Evidence[];
  /** How many of the observations that the story foretells were made and agree, and how many were made and do not. */
  agree: number;
  disagree: number;
  /** What it foretells and nobody measured. */
  unmeasured: string[];
}

/** Why it came out so, never without evidence. */
export interface Explanation {
  changedKey: string;
  likeliest: Story | null;
  /** What the data cannot exclude, likeliest first. */
  notExcluded: Story[];
  /** The one measurement that would settle it; `null`: nothing is open. */
  wouldSettle: Said | null;
  /** Why there is no story, where there is none. */
  silent: Said | null;
}
