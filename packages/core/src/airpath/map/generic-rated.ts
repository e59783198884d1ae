import type { CompressorMap } from '../model.ts';
import { flowOfInducer, type GenericStage, genericWork, USUAL_STAGE, workRiseOf } from './generic-stage.ts';
import { ISENTROPIC_EXPONENT, idealRiseOf, MAP_GAS, scalesOf, soundSpeedOf } from './map-gas.ts';

/** Isentropic efficiency of a rated point that names none: common practice, no source. */
export const GUESSED_EFFICIENCY = 0.72;

/**
 * The generic stage of a rated point: the point is taken as that of the best efficiency at its speed, and sets flow, efficiency and work there. A
 * diameter that is not known is the one with which the usual work gives the point's pressure ratio. Without a point the geometry alone must do.
 */
export function stageOfRatedPoint({ geometry, points, reference }: CompressorMap): {
  stage: GenericStage;
  wheelExitDiameter: number;
  isDiameterAssumed: boolean;
  hasRatedPoint: boolean;
} {
  const { wheelExitDiameter, wheelInletDiameter, blades, backsweep } = geometry;
  const inletTip =
    wheelExitDiameter !== null && wheelInletDiameter !== null
      ? Math.min(0.9, Math.max(0.4, wheelInletDiameter / wheelExitDiameter))
      : USUAL_STAGE.inletTip;
  const shape = {
    ...USUAL_STAGE,
    inletTip,
    inletHub: USUAL_STAGE.inletHub * (inletTip / USUAL_STAGE.inletTip),
    blades: blades ?? USUAL_STAGE.blades,
    backsweep: Math.min(Math.PI / 3, Math.max(0, backsweep ?? USUAL_STAGE.backsweep)),
  };
  const usual: GenericStage = { ...shape, designFlow: flowOfInducer(shape) };
  const [point] = points;
  if (point === undefined) {
    if (wheelExitDiameter === null)
      throw new Error('a generic stage needs a rated point or an exit diameter');
    return { stage: usual, wheelExitDiameter, isDiameterAssumed: false, hasRatedPoint: false };
  }
  const workRise = idealRiseOf(point.pressureRatio) / (point.efficiency ?? GUESSED_EFFICIENCY);
  const usualWork = genericWork(usual, 1);
  const diameter =
    wheelExitDiameter ?? diameterFor(workRise, usualWork, point.speedRpm, soundSpeedOf(reference));
  const { machPerRpm, flowUnit } = scalesOf(reference, diameter);
  const mach = point.speedRpm * machPerRpm;
  return {
    stage: {
      ...usual,
      designMach: mach,
      designEfficiency: (ISENTROPIC_EXPONENT * Math.log(point.pressureRatio)) / Math.log1p(workRise),
      designFlow: point.flow / flowUnit / mach,
      workFactor: (usual.workFactor * workRise) / workRiseOf(usualWork, mach),
    },
    wheelExitDiameter: diameter,
    isDiameterAssumed: wheelExitDiameter === null,
    hasRatedPoint: true,
  };
}

/** m: exit diameter whose tip speed does the work at that speed. */
export function diameterFor(workRise: number, work: number, speedRpm: number, soundSpeed: number): number {
  const tipSpeed = soundSpeed * Math.sqrt(workRise / ((MAP_GAS.ratio - 1) * work));
  return (60 * tipSpeed) / (Math.PI * speedRpm);
}
