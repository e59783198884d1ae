import { MAP_GAS, pressureRatioOfRise } from './map-gas.ts';

/** What a line of a fitted table of points is asked with. Flows in kg/s corrected. */
export interface MeasuredLine {
  topFlow: number;
  chokeFlow: number;
  /** Isentropic enthalpy rise over tip speed², at the top. */
  head: number;
  flowExponent: number;
  headExponent: number;
  droop: number;
  tipMach: number;
  /** Work over tip speed²: constant, slope and curve over the share of choke flow. */
  work: number;
  workSlope: number;
  workCurve: number;
  /** Highest efficiency of the map's points. */
  mostEfficiency: number;
}

/** As bare numbers in the order that the functions below read. The first is the kind. */
export function measuredShape(kind: number, line: MeasuredLine): number[] {
  const { topFlow, chokeFlow, head, flowExponent, headExponent, droop, tipMach } = line;
  const square = (MAP_GAS.ratio - 1) * tipMach * tipMach;
  return [
    kind,
    topFlow,
    head * square,
    1 / (chokeFlow - topFlow),
    flowExponent,
    1 / headExponent,
    droop / (topFlow * topFlow),
    line.work * square,
    (line.workSlope * square) / chokeFlow,
    (line.workCurve * square) / (chokeFlow * chokeFlow),
    line.mostEfficiency,
  ];
}

export const pressureRatioOnMeasured = (shape: readonly number[], flow: number): number =>
  pressureRatioOfRise(idealRise(shape, flow));

export function efficiencyOnMeasured(shape: readonly number[], flow: number): number {
  const efficiency = idealRise(shape, flow) / rawWork(shape, flow);
  return Math.min(efficiency, shape[10]!);
}

/** Where the efficiency is held at its highest the work is what belongs to that. */
export function workRiseOnMeasured(shape: readonly number[], flow: number): number {
  return Math.max(rawWork(shape, flow), idealRise(shape, flow) / shape[10]!);
}

function idealRise(shape: readonly number[], flow: number): number {
  const beyond = flow - shape[1]!;
  if (beyond <= 0) return shape[2]! * (1 - shape[6]! * beyond * beyond);
  const share = beyond * shape[3]!;
  return share < 1 ? shape[2]! * (1 - share ** shape[4]!) ** shape[5]! : 0;
}

/** Never below a hundredth of the top's ideal rise: a parabola may leave what is physical far from the points. */
function rawWork(shape: readonly number[], flow: number): number {
  const work = shape[7]! + flow * (shape[8]! + flow * shape[9]!);
  const least = 0.01 * shape[2]!;
  return Math.max(work, least);
}
