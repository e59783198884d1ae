import { type AirReading, type AirState, airState, CORRECTIONS, type CorrectionId } from '@pullbook/core/air';
import { fromInside, writeSaid } from '@pullbook/core/quantity';
import { accepted, type Result } from '@pullbook/core/remark';
import type { ViewOptions } from '@pullbook/views';
import { edgeNumber } from './number.ts';
import { type EdgeRemark, edgeRemarks } from './remark.ts';

/** Moist air and what the standards make of it. */
export interface AirReport {
  schemaVersion: 1;
  pressureKpa: number | null;
  temperatureC: number | null;
  altitudeM: number | null;
  dryPressureKpa: number | null;
  vapourPressureKpa: number | null;
  densityKgPerM3: number | null;
  densityAltitudeM: number | null;
  /** 0 to 1; `null`: unknown, and the air taken as dry */
  relativeHumidity: number | null;
  dewPointC: number | null;
  humidityRatioKgPerKg: number | null;
  corrections: {
    standard: CorrectionId;
    name: string;
    factor: number | null;
    insideValidity: boolean;
    /** Why it lies outside; empty: inside. */
    outside: string[];
    referenceState: string;
    supercharged: string;
  }[];
  remarks: EdgeRemark[];
}

const STANDARDS: CorrectionId[] = ['sae-j1349', 'sae-j607', 'iso-1585', 'din-70020'];

/** The report on a reading of the air, or why there is none. Its words are in SI, or in the units a person chose. */
export function airReport(reading: AirReading, options: ViewOptions | null = null): Result<AirReport> {
  const state = airState(reading);
  if (!state.ok) return state;
  const air = state.value;
  return accepted(
    {
      schemaVersion: 1,
      pressureKpa: edgeNumber(fromInside(air.pressure, 'kPa', 'absolutePressure')),
      temperatureC: edgeNumber(fromInside(air.temperature, '°C', 'temperature')),
      altitudeM: edgeNumber(reading.altitude),
      dryPressureKpa: edgeNumber(fromInside(air.dryPressure, 'kPa', 'absolutePressure')),
      vapourPressureKpa: edgeNumber(fromInside(air.vapourPressure, 'kPa', 'absolutePressure')),
      densityKgPerM3: edgeNumber(air.density),
      densityAltitudeM: edgeNumber(air.densityAltitude),
      relativeHumidity: reading.humidity === null ? null : edgeNumber(air.relativeHumidity),
      dewPointC: air.dewPoint === null ? null : edgeNumber(fromInside(air.dewPoint, '°C', 'temperature')),
      humidityRatioKgPerKg: edgeNumber(air.humidityRatio),
      corrections: STANDARDS.map((id) => correctionRow(id, air, options)),
      remarks: edgeRemarks(state.remarks, null, options),
    },
    state.remarks,
  );
}

function correctionRow(
  id: CorrectionId,
  air: AirState,
  options: ViewOptions | null,
): AirReport['corrections'][number] {
  const standard = CORRECTIONS[id];
  const factor = standard.factor(air);
  const outside = standard.outsideValidity(air, factor);
  return {
    standard: id,
    name: standard.name,
    factor: edgeNumber(factor),
    insideValidity: outside.length === 0,
    outside: outside.map(({ text, parts }) => (options === null ? text : writeSaid(text, parts, options))),
    referenceState: standard.referenceState,
    supercharged: standard.supercharged,
  };
}
