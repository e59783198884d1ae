import type { PartChange } from '../combination/index.ts';
import type { Said } from '../remark/index.ts';
import type { VerdictWord } from '../scatter/index.ts';
import type { SlopeWord } from './why-boost-moved.ts';

/** What a story may foretell something of. */
export type About =
  | 'power'
  | 'shape' // of the gain over engine speed, in per cent
  | 'crossover' // where the gain changes sign
  | 'boost'
  | 'boostAtTop' // whether boost moved at the top only
  | 'fuelFlow'
  | 'airFlow'
  | 'lambda'
  | 'sparkAdvance'
  | 'chargeTemperature'
  | 'chargeTrend' // charge temperature through the repeats
  | 'trend' // power through the repeats
  | 'impellerSpeed'
  | 'pulleyRatio' // impeller turns for a turn of the crank, by the sheets
  | 'slip' // of the belt, by shaft speed against the sheets
  | 'correction' // standard and weather factor; `up`: they differ
  | 'withoutSupercharger'; // boosted gain against that of the same change without one

/** `same`: not further from nothing than its threshold. */
export type State = 'up' | 'same' | 'down';

/** One thing that was seen of a change, against its own noise. */
export interface Observation {
  about: About;
  state: State;
  /** Changed less baseline: inside unit, or a share. `null`: only the state is known. */
  change: number | null;
  /** `Boost 7.6 kPa lower at the top, same tap.` */
  text: Said;
}

/** Everything a change is explained from. */
export interface ExplainInput {
  changedKey: string;
  /** `null`: nobody knows how sure the gain is. */
  verdict: VerdictWord | null;
  observations: readonly Observation[];
  /** Lines of the sheets that changed from the baseline; `null`: a sheet is missing. */
  changes: readonly PartChange[] | null;
  /** What presses the air in on both sides; `fitted` and `taken-off`: on one side only. */
  charger: 'none' | 'mechanical' | 'turbocharger' | 'fitted' | 'taken-off';
  /** Mean absolute over ambient pressure of the baseline's charge; `null`: no boost or no barometer. */
  pressureRatio: number | null;
  /** Change of mean boost as a share of the baseline's; `null`: not known at one tap. */
  boostRatio: number | null;
  /** How the supercharger's speed line runs where the engine works, by a match; missing or `null`: no match is at hand. */
  lineRuns?: SlopeWord | null;
}
