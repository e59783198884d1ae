import type { CompressorMap } from '@pullbook/core/airpath';
import type { PredictedCurve, PredictedFigure, Prediction } from '@pullbook/core/shop';

/**
 * Names at the edge of what a match needs: compressor maps, and the curves of predictions, as `book.json` writes them with
 * the unit last in each key.
 */

/** Flow and speed are corrected to the map's reference; the efficiency is a share. */
export interface EdgeMapPoint {
  flowKgPerS: number;
  pressureRatio: number;
  speedRpm: number;
  efficiencyRatio: number | null;
}

export type EdgeCompressorMap = Omit<CompressorMap, 'reference' | 'geometry' | 'points'> & {
  reference: { pressurePa: number; temperatureK: number };
  geometry: {
    wheelExitDiameterM: number | null;
    wheelInletDiameterM: number | null;
    blades: number | null;
    backsweepRad: number | null;
  };
  points: EdgeMapPoint[];
};

/** As observed in the air stated. */
export interface EdgePredictedCurve {
  engineSpeedRpm: number[];
  powerW: PredictedFigure;
  /** Above ambient; `null`: no boost foretold */
  boostPa: PredictedFigure | null;
  air: { pressurePa: number; temperatureK: number };
}

/** Of a person's word there is neither curve nor what made it. */
export type EdgePrediction = Omit<Prediction, 'curve'> & { curve?: EdgePredictedCurve };

export function edgeFromMap({ reference, geometry, points, ...rest }: CompressorMap): EdgeCompressorMap {
  return {
    ...rest,
    reference: { pressurePa: reference.pressure, temperatureK: reference.temperature },
    geometry: {
      wheelExitDiameterM: geometry.wheelExitDiameter,
      wheelInletDiameterM: geometry.wheelInletDiameter,
      blades: geometry.blades,
      backsweepRad: geometry.backsweep,
    },
    points: points.map(({ flow, pressureRatio, speedRpm, efficiency }) => ({
      flowKgPerS: flow,
      pressureRatio,
      speedRpm,
      efficiencyRatio: efficiency,
    })),
  };
}

export function mapFromEdge({ reference, geometry, points, ...rest }: EdgeCompressorMap): CompressorMap {
  return {
    ...rest,
    reference: { pressure: reference.pressurePa, temperature: reference.temperatureK },
    geometry: {
      wheelExitDiameter: geometry.wheelExitDiameterM,
      wheelInletDiameter: geometry.wheelInletDiameterM,
      blades: geometry.blades,
      backsweep: geometry.backsweepRad,
    },
    points: points.map(({ flowKgPerS, pressureRatio, speedRpm, efficiencyRatio }) => ({
      flow: flowKgPerS,
      pressureRatio,
      speedRpm,
      efficiency: efficiencyRatio,
    })),
  };
}

export function edgeFromPrediction({ curve, ...rest }: Prediction): EdgePrediction {
  if (!curve) return rest;
  const { engineSpeedRpm, power, boost, air } = curve;
  return {
    ...rest,
    curve: {
      engineSpeedRpm,
      powerW: power,
      boostPa: boost,
      air: { pressurePa: air.pressure, temperatureK: air.temperature },
    },
  };
}

export function predictionFromEdge({ curve, ...rest }: EdgePrediction): Prediction {
  if (curve === undefined) return rest;
  const { engineSpeedRpm, powerW, boostPa, air } = curve;
  const inside: PredictedCurve = {
    engineSpeedRpm,
    power: powerW,
    boost: boostPa,
    air: { pressure: air.pressurePa, temperature: air.temperatureK },
  };
  return { ...rest, curve: inside };
}
