import type { FigureBand, MatchCurve, MatchFigure, MatchState } from '@pullbook/core/airpath';
import { edgeNumber } from './number.ts';

/** How each figure of a match is called at the edge, and how it gets its unit. The order is that of the JSON. */
export const AT_THE_EDGE: Record<MatchFigure, readonly [name: string, times: number, plus: number]> = {
  boost: ['boostKpa', 1e-3, 0],
  manifoldPressure: ['manifoldPressureKpa', 1e-3, 0],
  manifoldTemperature: ['manifoldTemperatureC', 1, -273.15],
  pressureRatio: ['compressorPressureRatio', 1, 0],
  efficiency: ['compressorEfficiency', 1, 0],
  impellerSpeedRpm: ['impellerSpeedRpm', 1, 0],
  airFlow: ['airFlowKgPerS', 1, 0],
  drivePower: ['drivePowerKw', 1e-3, 0],
  frictionPower: ['frictionPowerKw', 1e-3, 0],
  brakePower: ['brakePowerKw', 1e-3, 0],
  brakeTorque: ['brakeTorqueNm', 1, 0],
  surgeMargin: ['surgeMarginPercent', 100, 0],
  chokeMargin: ['chokeMarginPercent', 100, 0],
  compressorInletPressure: ['compressorInletPressureKpa', 1e-3, 0],
  dischargePressure: ['dischargePressureKpa', 1e-3, 0],
  dischargeTemperature: ['dischargeTemperatureC', 1, -273.15],
  correctedSpeedRpm: ['correctedSpeedRpm', 1, 0],
  correctedFlow: ['correctedFlowKgPerS', 1, 0],
  compressorFlow: ['compressorFlowKgPerS', 1, 0],
  volumetricEfficiency: ['volumetricEfficiency', 1, 0],
  driveTorque: ['driveTorqueNm', 1, 0],
  indicatedPower: ['indicatedPowerKw', 1e-3, 0],
  boostIndex: ['boostIndex', 1, 0],
  slopeOfLine: ['slopeOfLine', 1, 0],
  tipSpeed: ['tipSpeedMPerS', 1, 0],
  coolerHeat: ['coolerHeatKw', 1e-3, 0],
};

/**
 * A match at one engine speed: `boostKpa`, `boostKpaLow`, `boostKpaHigh`, … `null` where there is no figure; without bands
 * the ends are not there.
 */
export type MatchPoint = {
  engineSpeedRpm: number;
  /** The worst that holds. */
  state: MatchState;
  /** Also where the state says something worse. */
  isBeyondMeasuredMap: boolean;
} & Record<string, number | string | boolean | null>;

/** The points of a match as they leave the program. `beyond`: see `beyondMeasured`. */
export function matchPoints(
  { engineSpeedRpm, figures, state }: MatchCurve,
  beyond: readonly boolean[],
  bands: Record<MatchFigure, FigureBand> | null,
): MatchPoint[] {
  return engineSpeedRpm.map((speed, node) => {
    const point: Record<string, number | string | null> = {};
    for (const [figure, [name, times, plus]] of Object.entries(AT_THE_EDGE) as [
      MatchFigure,
      (typeof AT_THE_EDGE)[MatchFigure],
    ][]) {
      const edge = (value: number | undefined) =>
        edgeNumber(value === undefined ? value : value * times + plus);
      point[name] = edge(figures[figure][node]);
      if (bands === null) continue;
      point[`${name}Low`] = edge(bands[figure].low[node]);
      point[`${name}High`] = edge(bands[figure].high[node]);
    }
    return { engineSpeedRpm: speed, state: state[node]!, ...point, isBeyondMeasuredMap: beyond[node]! };
  });
}

/** The same figures as differences against another match: a temperature's zero falls out. */
export function matchDifferences(
  engineSpeedRpm: readonly number[],
  difference: Record<MatchFigure, FigureBand>,
): Record<string, number | null>[] {
  return engineSpeedRpm.map((speed, node) => {
    const point: Record<string, number | null> = { engineSpeedRpm: speed };
    for (const [figure, [name, times]] of Object.entries(AT_THE_EDGE) as [
      MatchFigure,
      (typeof AT_THE_EDGE)[MatchFigure],
    ][]) {
      const edge = (value: number | null | undefined) => edgeNumber(value == null ? null : value * times);
      point[`${name}Low`] = edge(difference[figure].low[node]);
      point[`${name}High`] = edge(difference[figure].high[node]);
    }
    return point;
  });
}
