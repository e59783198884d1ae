import { type CombinationSheet, isSupercharged } from '../combination/index.ts';
import type { FitResidual, MatchFit } from '../fit/index.ts';
import { fuelOfSheet, isFuelTold } from '../fuel/index.ts';
import { extentOf, mean, median } from '../numeric/index.ts';
import {
  type ChannelMeaning,
  channelOf,
  type GriddedCurve,
  type Pull,
  type PullView,
  reachesBoost,
} from '../pull/index.ts';
import type { RuleThresholds } from './model.ts';
import { sheetNumber, sheetText } from './sheet-words.ts';
import { type Speaker, speakerOf } from './speaker.ts';

/** What the rules may know beside a pull and its view. */
export interface RuleContext {
  /** Sheet of its combination; `null`: not known. */
  sheet: CombinationSheet | null;
  thresholds?: RuleThresholds;
  /** The match fitted to this pull, with others or alone; missing or `null`: none is at hand. */
  fit?: Pick<MatchFit, 'residuals'> | null;
}

/** A pull as the rules look at it. */
export interface PullAtHand extends Speaker {
  pull: Pull;
  view: PullView;
  sheet: CombinationSheet | null;
  curve: GriddedCurve | null;
  /** Values of a channel on the nodes of the curve; `null`: there are none. */
  values: (meaning: ChannelMeaning) => Float64Array | null;
  /** By the sheet, or by the boost of the pull where there is none. */
  boosted: boolean;
  /** Barometer, Pa; `null`: not known. */
  ambient: number | null;
  /** Highest engine speed of the accepted window, r/min; `null`: no curve. */
  highestRpm: number | null;
  /** Highest boost on the curve, Pa; `null`: none logged. */
  highestBoost: number | null;
  /** Its boost beside that of the match fitted to it; `null`: there is none. */
  boostByFit: FitResidual | null;
}

/** Puts together what the rules ask of a pull. */
export function pullAtHand(
  pull: Pull,
  view: PullView,
  { sheet, thresholds = {}, fit = null }: RuleContext,
): PullAtHand {
  const { curve } = view;
  const values = (meaning: ChannelMeaning) => curve?.channels.get(meaning) ?? null;
  const boost = values('boost');
  return {
    ...speakerOf(`pull ${pull.id}`, thresholds),
    pull,
    view,
    sheet,
    curve,
    values,
    boosted: (sheet !== null && isSupercharged(sheet)) || reachesBoost(boost),
    ambient: ambientOf(pull),
    highestRpm: view.window?.windowRpm[1] ?? null,
    highestBoost: boost === null ? null : finiteOrNull(extentOf(boost)[1]),
    boostByFit: (fit === null ? undefined : boostResidual(fit, pull.id)) ?? null,
  };
}

const boostResidual = ({ residuals }: Pick<MatchFit, 'residuals'>, id: string): FitResidual | undefined =>
  residuals.find(({ figure, pullId }) => figure === 'boost' && pullId === id);

/** Barometer of a pull: as entered, else the middle of its channel, Pa; `null`: neither. */
export function ambientOf(pull: Pull): number | null {
  return pull.weather?.pressure ?? finiteOrNull(median(channelOf(pull, 'barometer')?.values ?? []));
}

/** Mean of `of` over `over` at the nodes where both are; NaN where they never are. */
export function meanRatio(of: ArrayLike<number>, over: ArrayLike<number>): number {
  const both = Array.from(of).flatMap((value, node) =>
    Number.isFinite(value) && Number.isFinite(over[node]!) ? [[value, over[node]!] as const] : [],
  );
  return mean(both.map(([value]) => value)) / mean(both.map(([, other]) => other));
}

/** Power as the brake had it, W on the nodes: the correction taken off; `null`: no power, or what it carries is not known. */
export function observedPower({ view, values }: PullAtHand): Float64Array | null {
  const power = values('power');
  const { factor } = view.correction;
  return power === null || factor === null || !(factor > 0) ? null : power.map((value) => value / factor);
}

/** Air for one of fuel by mass under which it is mostly alcohol: half ethanol is 11.7. */
const ALCOHOL_BELOW = 12;

/** What an engine burns, by its sheet. */
export function fuelOf(sheet: CombinationSheet | null): 'petrol' | 'alcohol' | 'not known' {
  if (sheet === null) return 'not known';
  if (isFuelTold(sheet))
    return fuelOfSheet(sheet).fuel.stoichiometricAirFuelRatio < ALCOHOL_BELOW ? 'alcohol' : 'petrol';
  const name = sheetText(sheet, 'fuel', 'name');
  if (/alcohol/i.test(name)) return 'alcohol';
  return name !== '' || sheetNumber(sheet, 'fuel', 'researchOctane') !== null ? 'petrol' : 'not known';
}

/** Median over the top quarter of the nodes at which there is a figure; NaN: there is none. */
export function atTheTop(values: Float64Array): number {
  const known = values.filter(Number.isFinite);
  return median(known.slice(Math.floor(known.length * 0.75)));
}

export const finiteOrNull = (value: number): number | null => (Number.isFinite(value) ? value : null);
