import type { FittedMap, SpeedLine } from '../model.ts';
import {
  efficiencyOnGeneric,
  genericLineShape,
  pressureRatioOnGeneric,
  workRiseOnGeneric,
} from './line-generic.ts';
import {
  efficiencyOnMeasured,
  measuredShape,
  pressureRatioOnMeasured,
  workRiseOnMeasured,
} from './line-measured.ts';
import { readColumn } from './map-table.ts';

/** First number of a line's shape. */
const MEASURED = 0;
const GENERIC = 1;

/**
 * One speed line, corrected r/min, ready to be asked by {@link pressureRatioOn}, {@link efficiencyOn} and {@link workRiseOn}. A standing
 * impeller is taken as one that turns at 1 r/min.
 *
 * @example speedLineAt(map, 48_000).chokeFlow // kg/s
 */
export function speedLineAt(map: FittedMap, correctedSpeedRpm: number): SpeedLine {
  const { kind, numbers } = map.shape;
  const speedRpm = Math.max(correctedSpeedRpm, 1);
  const tipMach = speedRpm * numbers.machPerRpm![0]!;
  const lastNode = numbers.choke!.length - 1;
  const place = Math.min(lastNode, tipMach / numbers.machStep![0]!);
  // Past the last node flow coefficient and head stay: flow goes on with speed.
  const stretch = tipMach / (place * numbers.machStep![0]!);
  const at = (column: readonly number[] | undefined): number => readColumn(column!, place);
  const unit = numbers.flowUnit![0]! * stretch;
  const chokeFlow = at(numbers.choke) * unit;
  const topFlow = at(numbers.top) * unit;
  const surgeFlow = at(numbers.surge) * unit;
  const shape =
    kind === 'lines'
      ? measuredShape(MEASURED, {
          topFlow,
          chokeFlow,
          head: at(numbers.head),
          flowExponent: at(numbers.flowExponent),
          headExponent: at(numbers.headExponent),
          droop: at(numbers.droop),
          tipMach,
          work: at(numbers.work),
          workSlope: at(numbers.workSlope),
          workCurve: at(numbers.workCurve),
          mostEfficiency: numbers.mostEfficiency![0]!,
        })
      : genericLineShape(GENERIC, {
          bestFlow: at(numbers.best) * unit,
          chokeFlow,
          bestEfficiency: at(numbers.bestEfficiency),
          leftExponent: at(numbers.leftExponent),
          rightExponent: at(numbers.rightExponent),
          falling: at(numbers.falling),
          tipMach,
          work: numbers.work![0]!,
          workSlope: numbers.workSlope![0]! / (numbers.designFlow![0]! * numbers.flowUnit![0]! * tipMach),
        });
  const line: SpeedLine = {
    speedRpm,
    tipMach,
    surgeFlow,
    peakFlow: Math.max(topFlow, surgeFlow),
    chokeFlow,
    highestPressureRatio: 1,
    highestEfficiency: at(numbers.highestEfficiency),
    measuredFlow: measuredFlowAt(numbers, speedRpm),
    shape,
  };
  line.highestPressureRatio = pressureRatioOn(line, line.peakFlow);
  return line;
}

/**
 * Outlet over inlet pressure, total to total, at a corrected flow. Falls from `peakFlow` to `chokeFlow`, where the line stands vertical; any larger
 * flow gives what is left there, so that the caller must look at `chokeFlow`. The generic stage is below 1 near choke at low speed: a restriction.
 */
export const pressureRatioOn = ({ shape }: SpeedLine, flow: number): number =>
  shape[0] === MEASURED ? pressureRatioOnMeasured(shape, flow) : pressureRatioOnGeneric(shape, flow);

/**
 * Isentropic efficiency, total to total, at a corrected flow; never above the highest of the map's points. It reaches 0 with the pressure rise at
 * choke, so that a temperature rise should be had from {@link workRiseOn}.
 */
export const efficiencyOn = ({ shape }: SpeedLine, flow: number): number =>
  shape[0] === MEASURED ? efficiencyOnMeasured(shape, flow) : efficiencyOnGeneric(shape, flow);

/** Rise of total temperature over inlet temperature at a corrected flow: above 0 also where no pressure is made. */
export const workRiseOn = ({ shape }: SpeedLine, flow: number): number =>
  shape[0] === MEASURED ? workRiseOnMeasured(shape, flow) : workRiseOnGeneric(shape, flow);

/** Half a per cent beyond a line still counts as on it: speeds are rounded. */
const SPEED_ROUNDING = 0.005;

/** Flows between the ends of the measured lines on either side, on the straight between them. */
function measuredFlowAt(numbers: Record<string, number[]>, speedRpm: number): [number, number] | null {
  const speeds = numbers.lineSpeedRpm;
  if (speeds === undefined) return null;
  const last = speeds.length - 1;
  if (speedRpm < speeds[0]! * (1 - SPEED_ROUNDING) || speedRpm > speeds[last]! * (1 + SPEED_ROUNDING))
    return null;
  let above = 0;
  while (above < last && speeds[above]! < speedRpm) above++;
  const below = above === 0 ? 0 : above - 1;
  const step = speeds[above]! - speeds[below]!;
  const share = step > 0 ? Math.min(1, (speedRpm - speeds[below]!) / step) : 0;
  const low = numbers.lineLowFlow!;
  const high = numbers.lineHighFlow!;
  return [
    low[below]! + share * (low[above]! - low[below]!),
    high[below]! + share * (high[above]! - high[below]!),
  ];
}
