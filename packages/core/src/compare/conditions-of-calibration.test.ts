import { describe, expect, test } from 'vitest';
import type { Calibration, Cell, Instrument } from '../pull/index.ts';
import { calibrationOn, cellRemarks, defaultRecipe, SILENT_SHOP, viewPull } from '../pull/index.ts';
import { inventedPoints, inventedPull, inventedTorque } from '../pull/invented-pull.testing.ts';
import { conditionsOfCalibration } from './conditions-of-calibration.ts';

const calibration = (day: string, validUntil: string | null): Calibration => ({
  day,
  validUntil,
  how: '',
  found: '',
  by: '',
});
const loadCell = (...calibrations: Calibration[]): Instrument => ({
  id: 'load',
  name: 'Load cell',
  measures: 'torque',
  serial: '',
  calibrations,
});
const cell = (...instruments: Instrument[]): Cell => ({
  id: 'c',
  name: 'Cell 1',
  brake: '',
  altitude: 210,
  momentOfInertia: 0.12,
  instruments,
  notes: '',
});
const rows = inventedPoints(
  Array.from({ length: 21 }, (_, row) => 2500 + 100 * row),
  inventedTorque,
);
const pullOf = (day: string | null, named: string | null = ' cell 1 ') =>
  inventedPull(rows, { recordedAt: day === null ? null : `${day}T10:00:00+01:00`, cell: named });
const counted = (key: string, day: string | null, named?: string | null) => {
  const pull = pullOf(day, named);
  return { key, pull, view: viewPull(pull, defaultRecipe()) };
};

describe('a calibration on a day', () => {
  // Days counted on a calendar: March has 31.
  test.each([
    ['2026-03-10', 'in force', 0],
    ['2026-04-09', 'in force', 30],
    ['2026-04-10', 'run out', 1],
    ['2026-03-09', 'none', null],
  ])('with an end, on %s: %s', (day, state, days) => {
    expect(calibrationOn(loadCell(calibration('2026-03-10', '2026-04-09')), day)).toMatchObject({
      state,
      days,
    });
  });

  test('without an end it is long ago after more than 30 days, and the last one counts', () => {
    const instrument = loadCell(calibration('2026-03-10', null), calibration('2026-01-05', null));
    expect(calibrationOn(instrument, '2026-04-09').state).toBe('in force');
    expect(calibrationOn(instrument, '2026-04-10')).toMatchObject({ state: 'long ago', days: 31 });
    expect(calibrationOn(instrument, '2026-02-01')).toMatchObject({ state: 'in force', days: 27 });
    expect(calibrationOn(instrument, null).state).toBe('day unknown');
  });
});

describe('like for like', () => {
  const state = (cells: Cell[], ...days: (string | null)[]) =>
    conditionsOfCalibration(
      days.map((day, index) => counted('AB'[index]!, day)),
      cells,
    )[0]?.state;

  test('the same calibration in force is alike; one made between the pulls differs; run out is unknown', () => {
    const once = [cell(loadCell(calibration('2026-03-01', '2026-03-31')))];
    expect(state(once, '2026-03-13', '2026-03-14')).toBe('alike');
    expect(state(once, '2026-03-13', '2026-04-02')).toBe('unknown');
    expect(state(once, '2026-03-13', null)).toBe('unknown');
    const twice = [cell(loadCell(calibration('2026-03-01', null), calibration('2026-03-14', null)))];
    expect(state(twice, '2026-03-13', '2026-03-14')).toBe('differs');
    expect(state([cell(loadCell())], '2026-03-13', '2026-03-14')).toBe('unknown');
  });

  test('nothing is asked where no cell is described', () => {
    expect(conditionsOfCalibration([counted('A', '2026-03-13')], [])).toEqual([]);
    expect(conditionsOfCalibration([counted('A', '2026-03-13', null)], [cell(loadCell())])).toEqual([]);
  });

  test('the row says how many days', () => {
    const [row] = conditionsOfCalibration(
      [counted('A', '2026-03-13'), counted('B', '2026-04-12')],
      [cell(loadCell(calibration('2026-03-01', '2026-03-31')))],
    );
    expect(row!.values.A).toBe('in force, made 2026-03-01, to 2026-03-31');
    expect(row!.values.B).toBe('ran out 2026-03-31, 12 days before the pull');
    expect(row!.why).toContain('common practice, no source');
  });
});

describe('beside a pull', () => {
  test('a calibration that ran out is a caution, one in force is not', () => {
    const described = cell(loadCell(calibration('2026-03-01', '2026-03-31')));
    const codes = (day: string) =>
      cellRemarks(pullOf(day), described)
        .filter(({ level }) => level === 'caution')
        .map(({ code }) => code);
    expect(codes('2026-03-13')).toEqual([]);
    expect(codes('2026-04-12')).toEqual(['calibration-not-in-force']);
  });

  test('the height of the cell catches a barometer reduced to the sea, where the pull notes none', () => {
    // 1,500 m: the standard atmosphere has 84.6 kPa there (ICAO, from memory); 101.3 kPa was reduced to the sea.
    const pull = inventedPull(rows, { cell: 'Cell 1' });
    const weather = { ...pull.weather!, pressure: 101_300 as never, altitude: null };
    const high = { binWidthRpm: null, cells: [{ ...cell(), altitude: 1500 }] };
    const codesIn = (shop: typeof high | typeof SILENT_SHOP) =>
      viewPull({ ...pull, weather }, defaultRecipe(), shop).remarks.map(({ code }) => code);
    expect(codesIn(high).some((code) => code.startsWith('barometer'))).toBe(true);
    expect(codesIn(SILENT_SHOP).some((code) => code.startsWith('barometer'))).toBe(false);
  });
});
