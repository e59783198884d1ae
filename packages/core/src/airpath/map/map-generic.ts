import type { CompressorMap, FittedMap } from '../model.ts';
import { stageOfRatedPoint } from './generic-rated.ts';
import {
  type GenericLine,
  type GenericStage,
  genericEfficiency,
  genericLine,
  genericWork,
  pressureRatioOfWork,
  workRiseOf,
} from './generic-stage.ts';
import { machNodes, neverFalling } from './map-table.ts';

/** Surge over the flow of the line's highest pressure ratio; a guess, ±15 %, common practice, no source. */
export const GUESSED_SURGE = 0.85;

/** What the generic stage leaves open beside a rated point, and with the geometry alone, one standard deviation each. Judged in `checks/compressor-maps`. */
const SPREAD_OF_RATED = { head: 0.06, efficiency: 0.03, flow: 0.05 };
const SPREAD_OF_GEOMETRY = { head: 0.2, efficiency: 0.05, flow: 0.25 };

/** The generic stage of a `rated` map as columns over tip Mach number, with the diameter it rests on. */
export function fitRated(map: CompressorMap): Pick<
  FittedMap,
  'wheelExitDiameter' | 'isDiameterAssumed' | 'spread'
> & {
  columns: Record<string, number[]>;
  hasRatedPoint: boolean;
} {
  const { stage, wheelExitDiameter, isDiameterAssumed, hasRatedPoint } = stageOfRatedPoint(map);
  return {
    wheelExitDiameter,
    isDiameterAssumed,
    hasRatedPoint,
    columns: genericColumns(stage),
    spread: hasRatedPoint ? SPREAD_OF_RATED : SPREAD_OF_GEOMETRY,
  };
}

/** Flows are over (density × speed of sound × exit diameter²), so that those of choke never fall with speed. */
function genericColumns(stage: GenericStage): Record<string, number[]> {
  const nodes = machNodes(2.5 * stage.designMach);
  const lines = nodes.map((mach) => genericLine(stage, mach));
  const column = (of: (line: GenericLine, mach: number) => number): number[] =>
    lines.map((line, node) => of(line, nodes[node]!));
  const top = column((line, mach) => topFlowOf(stage, line, Math.max(mach, 0.05)) * mach);
  return {
    machStep: [nodes[1]!],
    choke: column((line, mach) => line.largestFlow * mach),
    best: column((line, mach) => line.bestFlow * mach),
    top,
    surge: neverFalling(top.map((flow) => GUESSED_SURGE * flow)),
    bestEfficiency: column(({ bestEfficiency }) => bestEfficiency),
    leftExponent: column(({ leftExponent }) => leftExponent),
    rightExponent: column(({ rightExponent }) => rightExponent),
    falling: column(({ falling }) => falling),
    work: [genericWork(stage, 0)],
    workSlope: [genericWork(stage, 1) - genericWork(stage, 0)],
    designFlow: [stage.designFlow],
    designMach: [stage.designMach],
  };
}

/** Flow coefficient of the highest pressure ratio of a line. */
function topFlowOf(stage: GenericStage, line: GenericLine, mach: number): number {
  const STEPS = 400;
  let flow = 0;
  let highest = 0;
  for (let step = 1; step < STEPS; step++) {
    const at = (line.largestFlow * step) / STEPS;
    const work = workRiseOf(genericWork(stage, at / stage.designFlow), mach);
    const pressureRatio = pressureRatioOfWork(work, genericEfficiency(line, at));
    if (pressureRatio > highest) {
      highest = pressureRatio;
      flow = at;
    }
  }
  return flow;
}
