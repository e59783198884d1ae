import { type CombinationSheet, deriveFigures } from '../combination/index.ts';
import type { ComparedCombination } from '../compare/index.ts';

/** Brake mean effective pressure of a four-stroke engine, Pa: 4π × torque / displacement. 200 N·m of 2 L are 1.257 MPa. */
export function meanEffectivePressure(torque: number, displacement: number): number {
  return (4 * Math.PI * torque) / displacement;
}

/** What sets engines of different size side by side, SI. `null`: an input is not known. Four-stroke engines are assumed. */
export interface SurveyFigures {
  displacement: number | null;
  /** Why there is no displacement, where there is none. */
  missing: string | null;
  /** W/m³, of the highest power. */
  peakPowerPerDisplacement: number | null;
  /** W/m³, of the average over the averages' window. */
  meanPowerPerDisplacement: number | null;
  /** Pa, at the highest torque. */
  peakMeanEffectivePressure: number | null;
  /** Pa, of the average torque over the averages' window. */
  averageMeanEffectivePressure: number | null;
  /** m/s, at the speed of the highest power. */
  meanPistonSpeedAtPeakPower: number | null;
}

/** Figures of one combination of a survey, from its sheet and its compared curves. */
export function surveyFigures(sheet: CombinationSheet, figures: ComparedCombination): SurveyFigures {
  const { peakPower, peakTorque, averages } = figures;
  const derived = deriveFigures(sheet, peakPower?.atRpm);
  const figure = (id: string) => derived.find((one) => one.id === id)!;
  const { value: displacement, missing } = figure('displacement');
  const per = (value: number | null | undefined, share: (value: number, displacement: number) => number) =>
    value == null || !Number.isFinite(value) || displacement === null ? null : share(value, displacement);
  const ratio = (value: number, by: number) => value / by;
  return {
    displacement,
    missing,
    peakPowerPerDisplacement: per(peakPower?.value, ratio),
    meanPowerPerDisplacement: per(averages.get('power'), ratio),
    peakMeanEffectivePressure: per(peakTorque?.value, meanEffectivePressure),
    averageMeanEffectivePressure: per(averages.get('torque'), meanEffectivePressure),
    meanPistonSpeedAtPeakPower: peakPower === null ? null : figure('meanPistonSpeed').value,
  };
}
