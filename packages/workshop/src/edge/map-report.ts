import type { CompressorMap, FittedMap } from '@pullbook/core/airpath';
import type { Result } from '@pullbook/core/remark';
import { edgeNumber, edgeRange } from './number.ts';
import { type EdgeRemark, edgeRemarks } from './remark.ts';

/** A compressor map as it leaves the program: flow and speed corrected to its own reference. */
export interface MapReport {
  schemaVersion: 1;
  id: string;
  name: string;
  form: CompressorMap['form'];
  origin: CompressorMap['origin'];
  invented: boolean;
  notes: string;
  leftEnd: CompressorMap['leftEnd'];
  referencePressureKpa: number;
  referenceTemperatureC: number;
  wheelExitDiameterMm: number | null;
  wheelInletDiameterMm: number | null;
  blades: number | null;
  backsweepDeg: number | null;
  points: { flowKgPerS: number; pressureRatio: number; speedRpm: number; efficiency: number | null }[];
  measuredSpeedRpm: [low: number, high: number] | null;
  /** How well it meets its own points; `null`: it cannot be fitted, or nothing was measured but a rated point. */
  quality: {
    pressureRatioRmsPercent: number;
    efficiencyRms: number | null;
    lines: {
      speedRpm: number;
      points: number;
      pressureRatioRmsPercent: number;
      efficiencyRms: number | null;
    }[];
  } | null;
  remarks: EdgeRemark[];
}

const millimetres = (metres: number | null): number | null => (metres === null ? null : 1000 * metres);

export function mapReport(map: CompressorMap, fitted: Result<FittedMap>): MapReport {
  const quality = fitted.ok ? fitted.value.quality : null;
  const { wheelExitDiameter, wheelInletDiameter, blades, backsweep } = map.geometry;
  return {
    schemaVersion: 1,
    id: map.id,
    name: map.name,
    form: map.form,
    origin: map.origin,
    invented: map.invented,
    notes: map.notes,
    leftEnd: map.leftEnd,
    referencePressureKpa: map.reference.pressure / 1000,
    referenceTemperatureC: map.reference.temperature - 273.15,
    wheelExitDiameterMm: millimetres(wheelExitDiameter),
    wheelInletDiameterMm: millimetres(wheelInletDiameter),
    blades,
    backsweepDeg: backsweep === null ? null : (backsweep * 180) / Math.PI,
    points: map.points.map(({ flow, ...rest }) => ({ flowKgPerS: flow, ...rest })),
    measuredSpeedRpm: fitted.ok ? edgeRange(fitted.value.measuredSpeedRpm) : null,
    quality: quality && {
      pressureRatioRmsPercent: 100 * quality.pressureRatioRms,
      efficiencyRms: edgeNumber(quality.efficiencyRms),
      lines: quality.lines.map(({ speedRpm, points, pressureRatioRms, efficiencyRms }) => ({
        speedRpm,
        points,
        pressureRatioRmsPercent: 100 * pressureRatioRms,
        efficiencyRms: edgeNumber(efficiencyRms),
      })),
    },
    remarks: edgeRemarks(fitted.remarks),
  };
}
