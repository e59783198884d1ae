import type { AirReading, Humidity } from '@pullbook/core/air';
import type { Combination, CombinationSheet, SheetTable, SheetValue } from '@pullbook/core/combination';
import {
  type Audience,
  type Channel,
  OPEN_AUDIENCE,
  PLAIN_TREATMENT,
  type Pull,
  type PullSummary,
  type SweepSettings,
  type Treatment,
} from '@pullbook/core/pull';
import { absolutePressure, type QuantityKind, temperature } from '@pullbook/core/quantity';
import { EDGE_UNITS } from './edge-units.ts';

/**
 * Names at the edge: how what is held inside with bare numbers in SI is written in `book.json`, with the unit last in
 * the key, and how it is read back. The only place that knows both.
 */

export interface EdgeWeather {
  pressurePa: number;
  temperatureK: number;
  altitudeM: number | null;
  humidity: EdgeHumidity | null;
}

export type EdgeHumidity =
  | { route: 'relativeHumidity'; relativeHumidityRatio: number }
  | { route: 'dewPoint'; dewPointK: number }
  | { route: 'wetBulb'; wetBulbK: number }
  | { route: 'vapourPressure'; vapourPressurePa: number };

export interface EdgeSummary {
  peakPowerW: number | null;
  peakPowerRpm: number | null;
  peakTorqueNm: number | null;
  peakTorqueRpm: number | null;
}

export interface EdgeSweep {
  momentOfInertiaKgM2: number | null;
  inertiaCompensated: SweepSettings['inertiaCompensated'];
}

/** How a pull is read, each figure with its unit in its name. */
export interface EdgeTreatment {
  /** Seconds by which a channel is late, by meaning. */
  lagsS: Treatment['lags'];
  windowRpm: Treatment['windowRpm'];
  binWidthRpm: Treatment['binWidthRpm'];
  addInertia: boolean;
}

/** A channel without its values, which stand in the pull's CSV, one column a channel in this order. */
export type EdgeChannel = Omit<Channel, 'values'> & { column: string };

export type EdgePull = Omit<Pull, 'channels' | 'weather' | 'summary' | 'sweep' | 'treatment' | 'audience'> & {
  weather: EdgeWeather | null;
  summary: EdgeSummary | null;
  sweep: EdgeSweep;
  /** Missing in exports made before it was kept: the pull was read as it comes. */
  treatment?: EdgeTreatment;
  /** Missing in exports made before it was kept: seen by everyone. */
  audience?: Audience;
  channels: EdgeChannel[];
  /** Path of the CSV in the export; `null`: no channels. */
  channelsFile: string | null;
};

/** `value` is in `unit`, the inside unit of `kind`; `text` is as it was entered. */
export type EdgeSheetValue = Omit<SheetValue, 'table'> & {
  unit: string | null;
  /** `values` of a column are in its `unit`. */
  table?: Omit<SheetTable, 'columns'> & { columns: (SheetTable['columns'][number] & { unit: string })[] };
};

export type EdgeCombination = Omit<Combination, 'sheet'> & {
  sheet: Omit<CombinationSheet, 'sections'> & { sections: Record<string, Record<string, EdgeSheetValue>> };
};

export function edgeFromWeather({
  pressure,
  temperature: kelvin,
  humidity,
  altitude,
}: AirReading): EdgeWeather {
  return {
    pressurePa: pressure,
    temperatureK: kelvin,
    altitudeM: altitude,
    humidity: humidity && edgeFromHumidity(humidity),
  };
}

export function weatherFromEdge(edge: EdgeWeather): AirReading {
  return {
    pressure: absolutePressure(edge.pressurePa),
    temperature: temperature(edge.temperatureK),
    humidity: edge.humidity && humidityFromEdge(edge.humidity),
    altitude: edge.altitudeM,
  };
}

function edgeFromHumidity(humidity: Humidity): EdgeHumidity {
  switch (humidity.route) {
    case 'relativeHumidity':
      return { route: humidity.route, relativeHumidityRatio: humidity.ratio };
    case 'dewPoint':
      return { route: humidity.route, dewPointK: humidity.temperature };
    case 'wetBulb':
      return { route: humidity.route, wetBulbK: humidity.temperature };
    case 'vapourPressure':
      return { route: humidity.route, vapourPressurePa: humidity.pressure };
  }
}

function humidityFromEdge(edge: EdgeHumidity): Humidity {
  switch (edge.route) {
    case 'relativeHumidity':
      return { route: edge.route, ratio: edge.relativeHumidityRatio };
    case 'dewPoint':
      return { route: edge.route, temperature: temperature(edge.dewPointK) };
    case 'wetBulb':
      return { route: edge.route, temperature: temperature(edge.wetBulbK) };
    case 'vapourPressure':
      return { route: edge.route, pressure: absolutePressure(edge.vapourPressurePa) };
  }
}

export function edgeFromSummary(summary: PullSummary): EdgeSummary {
  return {
    peakPowerW: summary.peakPower,
    peakPowerRpm: summary.peakPowerRpm,
    peakTorqueNm: summary.peakTorque,
    peakTorqueRpm: summary.peakTorqueRpm,
  };
}

export function summaryFromEdge(edge: EdgeSummary): PullSummary {
  return {
    peakPower: edge.peakPowerW,
    peakPowerRpm: edge.peakPowerRpm,
    peakTorque: edge.peakTorqueNm,
    peakTorqueRpm: edge.peakTorqueRpm,
  };
}

export function edgeFromTreatment({ lags, ...rest }: Treatment): EdgeTreatment {
  return { lagsS: lags, ...rest };
}

function treatmentFromEdge({ lagsS, ...rest }: EdgeTreatment): Treatment {
  return { lags: lagsS, ...rest };
}

export function edgeFromPull(pull: Pull, columns: readonly string[], channelsFile: string | null): EdgePull {
  const { weather, summary, sweep, treatment, channels, ...rest } = pull;
  return {
    ...rest,
    weather: weather && edgeFromWeather(weather),
    summary: summary && edgeFromSummary(summary),
    sweep: { momentOfInertiaKgM2: sweep.momentOfInertia, inertiaCompensated: sweep.inertiaCompensated },
    treatment: edgeFromTreatment(treatment),
    channels: channels.map(({ values: _, ...channel }, index) => ({
      ...channel,
      column: columns[index] as string,
    })),
    channelsFile,
  };
}

export function pullFromEdge(edge: EdgePull, values: readonly Float64Array[]): Pull {
  const { weather, summary, sweep, treatment, audience, channels, channelsFile: _, ...rest } = edge;
  return {
    ...rest,
    weather: weather && weatherFromEdge(weather),
    summary: summary && summaryFromEdge(summary),
    sweep: { momentOfInertia: sweep.momentOfInertiaKgM2, inertiaCompensated: sweep.inertiaCompensated },
    treatment: treatment ? treatmentFromEdge(treatment) : PLAIN_TREATMENT,
    audience: audience ?? OPEN_AUDIENCE,
    channels: channels.map(({ column: __, ...channel }, index) => ({
      ...channel,
      values: values[index] as Float64Array,
    })),
  };
}

export function edgeFromCombination({ sheet, ...rest }: Combination): EdgeCombination {
  const sections = mapValues(sheet.sections, (fields) => mapValues(fields ?? {}, edgeFromSheetValue));
  return { ...rest, sheet: { ...sheet, sections } };
}

export function combinationFromEdge({ sheet, ...rest }: EdgeCombination): Combination {
  const sections = mapValues(sheet.sections, (fields) => mapValues(fields, sheetValueFromEdge));
  return { ...rest, sheet: { ...sheet, sections } };
}

function edgeFromSheetValue({ table, ...value }: SheetValue): EdgeSheetValue {
  const edge = { ...value, unit: unitOfSheetKind(value.kind) };
  if (table === undefined) return edge;
  const columns = table.columns.map((column) => ({ ...column, unit: EDGE_UNITS[column.kind].name }));
  return { ...edge, table: { ...table, columns } };
}

function sheetValueFromEdge({ unit: _, table, ...value }: EdgeSheetValue): SheetValue {
  if (table === undefined) return value;
  const columns = table.columns.map(({ unit: __, ...column }) => column);
  return { ...value, table: { ...table, columns } };
}

function unitOfSheetKind(kind: SheetValue['kind']): string | null {
  return kind === 'text' || kind === 'count' || kind === 'table'
    ? null
    : EDGE_UNITS[kind satisfies QuantityKind].name;
}

function mapValues<From, To>(entries: Record<string, From>, change: (value: From) => To): Record<string, To> {
  return Object.fromEntries(Object.entries(entries).map(([key, value]) => [key, change(value)]));
}
