import type { Baseline, Cooler, FlowLoss } from '@pullbook/core/airpath';
import { type CombinationSheet, sheetNumber } from '@pullbook/core/combination';
import type { FuelSupply } from '@pullbook/core/fuel';
import type { ChangePart, PartsList, ReachInput, ReachTarget } from '@pullbook/core/reach';
import { type Remark, remark } from '@pullbook/core/remark';

/** What a search may pick from. */
export type ThingsToChange = Pick<
  ReachInput,
  | 'blowerPulleys'
  | 'crankPulleys'
  | 'stepUps'
  | 'coolers'
  | 'fuels'
  | 'breathing'
  | 'speedLimits'
  | 'injectors'
  | 'pumps'
  | 'beltRibs'
>;

export interface OnEngine {
  sheet: CombinationSheet;
  baseline: Baseline;
  /** As it is now; `null`: none is fitted. */
  cooler: Cooler | null;
  supply: FuelSupply;
  /** Kinds of change that are left out. */
  without: readonly ChangePart[];
  /** r/min; `null`: some below the limit that stands, and none below the speeds that the target is about. */
  speedLimits: readonly number[] | null;
  /** `null`: none was given. */
  target: Pick<ReachTarget, 'atRpm' | 'windowRpm'> | null;
}

/** Pa lost in a cooler that was never measured, at the air a supercharged engine takes; as for a sheet without it (common practice, no source). */
const USUAL_LOSS = 4000;
const USUAL_RISE_OF_FLOW = 1.4;
const DENSITY_IN_CORE = 1.6;

/** r/min by which an engine may be stopped earlier. */
const EARLIER = [200, 400, 600];

/** A parts list on one engine: what of it can be fitted there, as many injectors as it has, its own pressure lost in a cooler. */
export function thingsToChange(
  list: PartsList,
  { sheet, baseline, cooler, supply, without, speedLimits, target }: OnEngine,
): ThingsToChange & { remarks: Remark[] } {
  const unless = <T>(part: ChangePart, items: readonly T[]): T[] =>
    without.includes(part) ? [] : [...items];
  const isToothed = sheetNumber(sheet, 'drive', 'blowerPulleyTeeth') !== null;
  const loss = cooler?.loss ?? usualLoss(baseline);
  const count = supply.injectors?.count ?? sheetNumber(sheet, 'shortBlock', 'cylinders');
  return {
    blowerPulleys: isToothed
      ? []
      : unless(
          'pulley',
          list.blowerPulleys.map(({ diameter, cost }) => ({ diameter, cost })),
        ),
    crankPulleys: isToothed
      ? []
      : unless(
          'pulley',
          list.crankPulleys.map(({ diameter, cost }) => ({ diameter, cost })),
        ),
    stepUps: unless(
      'stepUp',
      list.stepUps.map(({ ratio, cost }) => ({ ratio, cost })),
    ),
    coolers: unless(
      'cooler',
      list.coolers.map((one) => ({ ...one, cooler: one.cooler && withLoss(one.cooler, loss) })),
    ),
    fuels: unless('fuel', list.fuels),
    breathing: unless('breathing', list.breathing),
    speedLimits: unless('speedLimit', speedLimits ?? earlierLimits(sheet, baseline, target)),
    injectors:
      count === null
        ? []
        : unless(
            'injectors',
            list.injectors.map(({ from: _, injectors, ...one }) => ({
              ...one,
              injectors: { ...injectors, count },
            })),
          ),
    pumps: unless(
      'pump',
      list.pumps.map(({ pump, cost }) => ({ pump, cost })),
    ),
    beltRibs: isToothed
      ? []
      : unless(
          'belt',
          list.beltRibs.map(({ ribs, cost }) => ({ ribs, cost })),
        ),
    remarks: isToothed && !without.includes('pulley') ? [TOOTHED] : [],
  };
}

/** A list that does not tell what a cooler loses has none in it. */
const withLoss = (cooler: Cooler, loss: FlowLoss): Cooler =>
  cooler.loss.pressureDifference > 0 ? cooler : { ...cooler, loss };

const usualLoss = ({ airFlow }: Baseline): FlowLoss => ({
  pressureDifference: USUAL_LOSS,
  atFlow: USUAL_RISE_OF_FLOW * Math.max(...airFlow.filter(Number.isFinite)),
  atDensity: DENSITY_IN_CORE,
});

function earlierLimits(
  sheet: CombinationSheet,
  { engineSpeedRpm }: Baseline,
  target: OnEngine['target'],
): number[] {
  const highest = engineSpeedRpm.at(-1)!;
  const limit = sheetNumber(sheet, 'ignition', 'engineSpeedLimit') ?? highest;
  const needed = target?.windowRpm?.[1] ?? target?.atRpm ?? 0;
  return EARLIER.map((less) => limit - less).filter((speed) => speed > engineSpeedRpm[0]! && speed >= needed);
}

const TOOTHED = remark(
  'note',
  'drive-toothed',
  'The drive is toothed, so the pulleys of the parts list do not go on it and none is tried. What is left in the supercharger says to which ratio it could be turned.',
);
