import { readFileSync } from 'node:fs';
import type { CompressorMap, MapPoint } from '@pullbook/core/airpath';
import { toInside } from '@pullbook/core/quantity';

/** The measured maps of PROVENANCE.md as the program takes them. */
export interface MeasuredMap {
  name: string;
  map: CompressorMap;
}

const AT_SEA_LEVEL = { pressure: 101_325, temperature: 288.15 };

/** A CSV of this folder, all cells numbers. */
export function readTable(file: string): Record<string, number>[] {
  const text = readFileSync(new URL(`./${file}`, import.meta.url), 'utf8');
  const [header = '', ...rows] = text.trim().split('\n');
  const names = header.split(',');
  return rows.map((row) =>
    Object.fromEntries(row.split(',').map((cell, column) => [names[column]!, Number(cell)])),
  );
}

/** Readings of the NASA stage as points: its own corrected flow and speed, pressure ratio and efficiency. */
const readingsOf = (file: string): MapPoint[] =>
  readTable(file).map((row) => ({
    flow: toInside(row.correctedFlowLbmPerS!, 'lb/s', 'massFlow'),
    speedRpm: row.correctedSpeedRpm!,
    pressureRatio: row.pressureRatio!,
    efficiency: row.efficiency!,
  }));

const pointsOf = (file: string): MapPoint[] =>
  readTable(file).map((row) => ({
    flow: row.flowKgPerS!,
    speedRpm: row.speedRpm!,
    pressureRatio: row.pressureRatio!,
    efficiency: row.efficiency!,
  }));

const degrees = (value: number): number => (value * Math.PI) / 180;

const mapOf = (name: string, geometry: CompressorMap['geometry'], points: MapPoint[]): MeasuredMap => ({
  name,
  map: {
    id: name,
    name,
    form: 'points',
    reference: AT_SEA_LEVEL,
    geometry,
    points,
    leftEnd: 'surge',
    origin: 'measured',
    notes: '',
    invented: false,
    createdAt: '2026-01-01T00:00:00Z',
  },
});

const HECC = {
  wheelExitDiameter: 2 * 8.5 * 0.0254,
  wheelInletDiameter: 2 * 4.73 * 0.0254,
  blades: 30,
  backsweep: degrees(30),
};

export const MEASURED_MAPS: readonly MeasuredMap[] = [
  mapOf('HECC vaned', HECC, readingsOf('hecc-vaned.csv')),
  mapOf('HECC vaneless', HECC, readingsOf('hecc-vaneless.csv')),
  mapOf(
    'CC3 vaneless',
    { wheelExitDiameter: 0.431, wheelInletDiameter: 0.21, blades: 30, backsweep: degrees(50) },
    pointsOf('cc3-vaneless.csv'),
  ),
  mapOf(
    'Eckardt O',
    { wheelExitDiameter: 0.4, wheelInletDiameter: 0.28, blades: 20, backsweep: 0 },
    pointsOf('eckardt-o.csv'),
  ),
];
