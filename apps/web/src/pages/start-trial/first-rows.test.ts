import type { PullRow } from '@pullbook/views';
import { expect, test } from 'vitest';
import { firstRows } from './first-rows.ts';

const pull = (id: string, combinationId: string | null): PullRow => ({
  id,
  name: id,
  combinationId,
  combinationName: '',
  recordedAt: '',
  cell: '',
  peakPower: '',
  peakTorque: '',
  standard: '',
  chips: [],
});

const pulls = [pull('1', 'cam'), pull('2', 'base'), pull('3', 'base'), pull('4', null)];

test('ticked pulls make one row a combination; the others of it are left out', () => {
  expect(firstRows(pulls, ['2', '1'])).toEqual([
    { combinationId: 'base', shortName: '', takenApart: null, leftOut: ['3'] },
    { combinationId: 'cam', shortName: '', takenApart: null, leftOut: [] },
  ]);
});

test('there are always a baseline and one more to fill in', () => {
  expect(firstRows(pulls, []).map((row) => row.combinationId)).toEqual(['', '']);
  expect(firstRows(pulls, ['4', 'gone']).map((row) => row.combinationId)).toEqual(['', '']);
  expect(firstRows(pulls, ['3']).map((row) => row.combinationId)).toEqual(['base', '']);
});
