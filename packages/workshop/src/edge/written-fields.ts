import type { AirReading } from '@pullbook/core/air';
import { displayUnit, fromInside, type QuantityKind, type UnitSystem } from '@pullbook/core/quantity';
import type { PullHead } from '../pull-views.ts';

/** What is written down about a pull, as text that `pullDetailsFromText` reads back as the same; '' nothing. */
export interface WrittenFields {
  name: string;
  combinationId: string;
  setUp: string;
  cell: string;
  operator: string;
  /** ISO 8601 as recorded. */
  recordedAt: string;
  pressure: string;
  temperature: string;
  humidity: string;
  altitude: string;
  standard: PullHead['carried']['standard'];
  factor: string;
  sparkAdvance: string;
  targetLambda: string;
  jets: string;
  fuelPressure: string;
  coolerWater: string;
  fuelBatch: string;
  tuneNotes: string;
  boostTap: string;
  chargeProbe: string;
  inletProbe: string;
  momentOfInertia: string;
  inertiaCompensated: '' | 'yes' | 'no';
  outcome: PullHead['outcome'];
}

export function writtenFields(head: PullHead, setUpWords: string, units: UnitSystem): WrittenFields {
  const { tune, places, sweep, carried } = head;
  const { momentOfInertia, inertiaCompensated } = sweep;
  return {
    name: head.name,
    combinationId: head.combinationId ?? '',
    setUp: setUpWords,
    cell: head.cell ?? '',
    operator: head.operator ?? '',
    recordedAt: head.recordedAt ?? '',
    ...airText(head.weather, units),
    standard: carried.standard,
    factor: carried.standard === 'observed' || carried.factor === null ? '' : String(carried.factor),
    sparkAdvance: tune.sparkAdvance ?? '',
    targetLambda: tune.targetLambda ?? '',
    jets: tune.jets ?? '',
    fuelPressure: tune.fuelPressure ?? '',
    coolerWater: tune.coolerWater ?? '',
    fuelBatch: tune.fuelBatch ?? '',
    tuneNotes: tune.notes ?? '',
    boostTap: places.boostTap ?? '',
    chargeProbe: places.chargeProbe ?? '',
    inletProbe: places.inletProbe ?? '',
    momentOfInertia: momentOfInertia === null ? '' : `${momentOfInertia} kg·m²`,
    inertiaCompensated: inertiaCompensated === 'unknown' ? '' : inertiaCompensated,
    outcome: head.outcome,
  };
}

function airText(
  air: AirReading | null,
  units: UnitSystem,
): Pick<WrittenFields, 'pressure' | 'temperature' | 'humidity' | 'altitude'> {
  if (air === null) return { pressure: '', temperature: '', humidity: '', altitude: '' };
  return {
    pressure: written(air.pressure, 'absolutePressure', units),
    temperature: written(air.temperature, 'temperature', units),
    humidity: humidityText(air, units),
    altitude: air.altitude === null ? '' : `${Number(air.altitude.toPrecision(6))} m`,
  };
}

function humidityText({ humidity }: AirReading, units: UnitSystem): string {
  switch (humidity?.route) {
    case undefined:
      return '';
    case 'relativeHumidity':
      return `${Number((100 * humidity.ratio).toPrecision(6))} %`;
    case 'dewPoint':
      return `${written(humidity.temperature, 'temperature', units)} dew point`;
    case 'wetBulb':
      return `${written(humidity.temperature, 'temperature', units)} wet bulb`;
    case 'vapourPressure':
      return `${written(humidity.pressure, 'absolutePressure', units)} vapour`;
  }
}

/** Six digits: as fine as any barometer of a cell, and what was typed comes back as it was. */
function written(value: number, kind: QuantityKind, units: UnitSystem): string {
  const unit = displayUnit(kind, units);
  return `${Number(fromInside(value, unit).toPrecision(6))} ${unit.name}`;
}
