import { afterEach, beforeEach, expect, test } from 'vitest';
import { setAudience } from './audience.ts';
import { addCalibration, addInstrument, removeInstrument } from './cell-instruments.ts';
import { addCell, cellsReport, changeCell } from './cells.ts';
import { importFile } from './import-file.ts';
import { pullPageOf } from './pull-pages.ts';
import { changeSettings, settingsReport } from './settings.ts';
import { stepTestFile, temporaryBook } from './testing/temporary-book.ts';

const SI = { units: 'si', decimalMark: '.' } as const;
let place: Awaited<ReturnType<typeof temporaryBook>>;
beforeEach(async () => {
  place = await temporaryBook();
});
afterEach(() => place.remove());

const words = async (act: Promise<{ ok: boolean; remarks: { message: string }[] }>) => {
  const { ok, remarks } = await act;
  return ok ? 'done' : remarks.map(({ message }) => message).join('\n');
};

async function pullIn(cell: string): Promise<string> {
  const imported = await importFile(place.book, {
    name: 'step.csv',
    bytes: stepTestFile(),
    details: { cell, recordedAt: '2026-03-14T10:00:00+01:00' },
  });
  if (!imported.ok) throw new Error(imported.remarks[0]?.message);
  return imported.value.pulls[0]!.id;
}

test('a cell that pulls only name is listed, and is theirs once it is described', async () => {
  await pullIn('cell 1');
  expect(await cellsReport(place.book, SI)).toMatchObject({
    cells: [],
    undescribed: [{ name: 'cell 1', pulls: 1 }],
  });
  await addCell(place.book, { name: 'Cell 1', altitude: '690 ft', momentOfInertia: '0.12 kg·m²' });
  const { cells, undescribed } = await cellsReport(place.book, SI);
  expect(undescribed).toEqual([]);
  // 690 ft x 0.3048 m, by definition of the foot.
  expect(cells[0]!.altitudeM).toBeCloseTo(210.312, 9);
  expect(cells[0]).toMatchObject({ name: 'Cell 1', pulls: 1, altitudeText: '210\u00a0m' });
});

test('instruments and calibrations stand beside the pull, and a run-out one is named', async () => {
  const id = await pullIn('Cell 1');
  await addCell(place.book, { name: 'Cell 1', altitude: '210 m' });
  expect(await words(addInstrument(place.book, 'Cell 1', { name: 'Load cell', measures: 'Torque' }))).toBe(
    'done',
  );
  const calibration = { day: '2026-02-01', validUntil: '2026-03-02', how: 'dead weights' };
  expect(await words(addCalibration(place.book, 'Cell 1', 'Load cell', calibration))).toBe('done');
  const page = await pullPageOf(place.book, id, SI);
  if (!page.ok) throw new Error(page.remarks[0]?.message);
  expect(page.value.conditions).toContainEqual({
    label: 'Calibration, Load cell',
    value: 'ran out 2026-03-02, 12 days before the pull',
  });
  expect(page.value.remarks.map(({ text }) => text).join()).toContain('ran out 2026-03-02');
  expect(await words(removeInstrument(place.book, 'Cell 1', 'Load cell', ' '))).toContain('with a reason');
  expect(await words(removeInstrument(place.book, 'Cell 1', 'Load cell', 'sold'))).toBe('done');
  expect((await cellsReport(place.book, SI)).cells[0]!.instruments).toEqual([]);
});

test('on an older stamp every act on a cell is refused, and the settings too; without one it goes through', async () => {
  const { book } = place;
  await addCell(book, { name: 'Cell 1' });
  await changeSettings(book, { units: 'si' });
  const stamp = (await cellsReport(book, SI)).cells[0]!.stamp;
  const settingsStamp = (await settingsReport(book)).stamp;
  await addInstrument(book, 'Cell 1', { name: 'Load cell', measures: 'torque' }, stamp);
  await changeSettings(book, { shopName: 'Theirs' }, settingsStamp);
  const day = '2026-02-01';
  for (const act of [
    () => changeCell(book, 'Cell 1', { notes: 'mine' }, '', stamp),
    () => addInstrument(book, 'Cell 1', { name: 'Other', measures: 'torque' }, stamp),
    () => addCalibration(book, 'Cell 1', 'Load cell', { day }, stamp),
    () => removeInstrument(book, 'Cell 1', 'Load cell', 'sold', stamp),
    () => changeSettings(book, { shopName: 'Mine' }, settingsStamp),
  ])
    await expect(act()).rejects.toMatchObject({ code: 'changed meanwhile' });
  expect(await words(addCalibration(book, 'Cell 1', 'Load cell', { day }))).toBe('done');
  expect((await cellsReport(book, SI)).cells[0]).toMatchObject({
    notes: '',
    instruments: [{ calibrations: [{ day }] }],
  });
  expect((await settingsReport(book)).shopName).toBe('Theirs');
});

test('what cannot be is refused in words', async () => {
  await addCell(place.book, { name: 'Cell 1' });
  await addInstrument(place.book, 'Cell 1', { name: 'Load cell', measures: 'torque' });
  expect(await words(addCell(place.book, { name: 'cell 1' }))).toContain('There is a cell "Cell 1" already');
  expect(await words(addCell(place.book, { name: ' ' }))).toContain('A cell needs a name');
  expect(await words(addCell(place.book, { name: 'C', altitude: '210 km' }))).toContain('Altitude: "210 km"');
  expect(await words(addCell(place.book, { name: 'C', momentOfInertia: '0 kg·m²' }))).toContain('above 0');
  expect(await words(changeCell(place.book, 'Cell 1', {}, ''))).toContain('Nothing to change');
  expect(await words(addInstrument(place.book, 'Cell 1', { name: 'x', measures: 'mood' }))).toContain(
    '"mood" is not a channel',
  );
  const calibrated = (day: string, validUntil?: string) =>
    words(addCalibration(place.book, 'Cell 1', 'Load cell', { day, validUntil }));
  expect(await calibrated('2026-02-30')).toContain('"2026-02-30" is not a day');
  expect(await calibrated('9999-01-01')).toContain('what is planned is no calibration');
  expect(await calibrated('2026-02-01', '2026-01-01')).toContain('or later');
});

test('who may see a pull: kept, shown, an embargo over when its day has come, and refused in words', async () => {
  const id = await pullIn('Cell 1');
  const chips = async () => {
    const page = await pullPageOf(place.book, id, SI);
    return page.ok ? page.value.chips.map(({ text }) => text) : [];
  };
  await setAudience(place.book, id, { who: 'customer', notBefore: '9000-05-03' }, '');
  expect(await chips()).toEqual(expect.arrayContaining(['Customer’s', 'Not before 3 May 9000']));
  await setAudience(place.book, id, { notBefore: '2001-05-03' }, '');
  expect(await chips()).toContain('Customer’s');
  expect(await chips()).not.toContain('Not before 3 May 2001');
  expect(await words(setAudience(place.book, id, { who: 'friends' }, ''))).toContain(
    'shop (never leaves it)',
  );
  expect(await words(setAudience(place.book, id, { notBefore: 'May' }, ''))).toContain('is not a day');
  expect(await words(setAudience(place.book, id, {}, ''))).toContain('Say who may see it');
});
