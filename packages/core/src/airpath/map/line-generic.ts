import { idealRiseOf, MAP_GAS, pressureRatioOfRise } from './map-gas.ts';

/** What a line of the generic stage is asked with. Flows in kg/s corrected. */
export interface GenericLineTerms {
  bestFlow: number;
  chokeFlow: number;
  /** Polytropic. */
  bestEfficiency: number;
  leftExponent: number;
  rightExponent: number;
  falling: number;
  tipMach: number;
  /** Work over tip speed² without flow, and how it changes for a kg/s at this speed. */
  work: number;
  workSlope: number;
}

/** As bare numbers in the order that the functions below read. The first is the kind. */
export function genericLineShape(kind: number, line: GenericLineTerms): number[] {
  const square = (MAP_GAS.ratio - 1) * line.tipMach * line.tipMach;
  return [
    kind,
    line.bestFlow,
    line.chokeFlow,
    line.bestEfficiency,
    line.leftExponent,
    1 / line.leftExponent,
    line.rightExponent,
    1 / line.rightExponent,
    line.falling,
    line.work * square,
    line.workSlope * square,
    0.05 * square,
  ];
}

export const pressureRatioOnGeneric = (shape: readonly number[], flow: number): number =>
  pressureRatioOfRise(workRiseOnGeneric(shape, flow)) ** polytropic(shape, flow);

/** Isentropic; below 0 where the stage is a restriction. */
export const efficiencyOnGeneric = (shape: readonly number[], flow: number): number =>
  idealRiseOf(pressureRatioOnGeneric(shape, flow)) / workRiseOnGeneric(shape, flow);

export function workRiseOnGeneric(shape: readonly number[], flow: number): number {
  const work = shape[9]! + Math.min(flow, shape[2]!) * shape[10]!;
  return Math.max(work, shape[11]!);
}

function polytropic(shape: readonly number[], flow: number): number {
  const share = flow / shape[1]!;
  if (share <= 1) return share <= 0 ? 0 : shape[3]! * (1 - (1 - share) ** shape[4]!) ** shape[5]!;
  const beyond = (flow - shape[1]!) / (shape[2]! - shape[1]!);
  const kept = beyond < 1 ? (1 - beyond ** shape[6]!) ** shape[7]! : 0;
  return shape[3]! * (1 - shape[8]! + shape[8]! * kept);
}
