import { FOOT, MINUTE, POUND } from '../../quantity/index.ts';

/** kg/m³ of air at 15 °C and 101.325 kPa, with which a volume flow is mostly turned into a mass flow. */
const USUAL_DENSITY = 1.225;

/** By how much numbers of one flow differ in the units that maps are printed in. */
const FACTORS: readonly [factor: number, words: string][] = [
  [1 / POUND, 'pounds among kilograms'],
  [MINUTE, 'flow per minute among flow per second'],
  [MINUTE / POUND, 'lb/min among kg/s'],
  [POUND / (USUAL_DENSITY * FOOT ** 3), 'ft³/min among lb/min'],
  [1 / (USUAL_DENSITY * FOOT ** 3), 'ft³/min among kg/min'],
  [MINUTE / (USUAL_DENSITY * FOOT ** 3), 'ft³/min among kg/s'],
  [1 / USUAL_DENSITY, 'a volume among masses'],
];

/** What a factor between the flows of two lines looks like; `null`: no usual pair of units. `likelyUnit(2.2)`: pounds among kilograms. */
export function likelyUnit(factor: number): string | null {
  const isNear = ([usual]: readonly [number, string]): boolean => Math.abs(Math.log(factor / usual)) < 0.2;
  const direct = FACTORS.find(isNear);
  if (direct !== undefined) return direct[1];
  const turned = FACTORS.find(([usual, words]) => isNear([1 / usual, words]));
  return turned === undefined
    ? null
    : `the other way round: ${turned[1].replace(/^(.*) among (.*)$/, '$2 among $1')}`;
}
