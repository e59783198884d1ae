import { readFileSync } from 'node:fs';
import type { Channel, ChannelMeaning, Pull } from '@pullbook/core/pull';
import { MEANINGS, OPEN_AUDIENCE, PLAIN_TREATMENT } from '@pullbook/core/pull';

/** One row of a curve file, in the file's own units. */
export interface CurveRow {
  rpm: number;
  torqueNm: number;
  powerKw: number;
}

/** Reads a curve beside this file without any of the product's own reading. */
export function curveRows(number: 1 | 2 | 3): CurveRow[] {
  const text = readFileSync(new URL(`./curve-${number}.csv`, import.meta.url), 'utf8');
  return text
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => {
      const [rpm, torqueNm, powerKw] = line.split(',').map(Number);
      return { rpm: rpm!, torqueNm: torqueNm!, powerKw: powerKw! };
    });
}

/** The rows as a pull, observed, with the channels asked for. */
export function curvePull(
  rows: readonly CurveRow[],
  meanings: readonly ('torque' | 'power')[] = ['torque', 'power'],
): Pull {
  const channel = (meaning: ChannelMeaning, values: number[]): Channel => ({
    meaning,
    name: meaning,
    unit: '',
    kind: MEANINGS[meaning].kind,
    values: Float64Array.from(values),
    origin: 'measured',
  });
  const values = { torque: rows.map((row) => row.torqueNm), power: rows.map((row) => 1000 * row.powerKw) };
  return {
    id: 'curve',
    name: 'curve',
    combinationId: null,
    setUpId: null,
    sessionId: null,
    orderInSession: null,
    recordedAt: null,
    cell: null,
    operator: null,
    form: 'curve',
    channels: [
      channel(
        'engineSpeed',
        rows.map((row) => row.rpm),
      ),
      ...meanings.map((meaning) => channel(meaning, values[meaning])),
    ],
    summary: null,
    weather: null,
    carried: { standard: 'observed', factor: 1 },
    sweep: { momentOfInertia: null, inertiaCompensated: 'unknown' },
    tune: {},
    places: {},
    notes: [],
    events: [],
    outcome: 'completed',
    treatment: PLAIN_TREATMENT,
    audience: OPEN_AUDIENCE,
    origin: 'measured',
    fileHash: null,
    invented: false,
  };
}
