import { afterEach, beforeEach, expect, test } from 'vitest';
import { amendPull } from './amend-pull.ts';
import { addCombinationFromText } from './combinations.ts';
import { type PullDetailsText, pullDetailsFromText } from './edge/pull-details.ts';
import { importFile } from './import-file.ts';
import { likeReport, writtenReport } from './like-report.ts';
import { addSummaryPull } from './summary-pull.ts';
import { sheetText, stepTestFile, temporaryBook } from './testing/temporary-book.ts';

let made: Awaited<ReturnType<typeof temporaryBook>>;
beforeEach(async () => {
  made = await temporaryBook();
  for (const name of ['Base cam', 'Long cam'])
    await addCombinationFromText(made.book, { sheetText: sheetText(name), engineName: 'Six' });
  const first = await importFile(made.book, {
    name: 'run-6.csv',
    bytes: stepTestFile(),
    details: details({
      name: 'Pull 6',
      combinationId: 'Base cam',
      setUp: 'first fitting',
      cell: 'Cell 2',
      operator: 'second shift',
      recordedAt: '2026-03-14T10:00:00+01:00',
      weather: { pressure: '29.4 inHg', temperature: '86 F', humidity: '20 C wet bulb', altitude: '300 m' },
      carried: { standard: 'sae-j1349', factor: 1.021 },
      tune: { sparkAdvance: '26 deg' },
      places: { boostTap: 'plenum' },
      momentOfInertia: '0.31 kg·m²',
      notes: 'belt dusty',
      events: [{ engineSpeed: '5600 rpm', text: 'throttle lifted' }],
      outcome: 'aborted',
    }),
  });
  expect(first.ok).toBe(true);
});
afterEach(() => made.remove());

function details(text: PullDetailsText) {
  const read = pullDetailsFromText(text, '2026-03-14T09:00:00Z');
  if (!read.ok) throw new Error(read.remarks[0]?.message);
  return read.value;
}
const summary = { peakPower: '331 hp', peakPowerRpm: '6450 rpm' };
const enter = async (text: PullDetailsText, like = 'last') => {
  const added = await addSummaryPull(made.book, {
    summary,
    origin: 'measured',
    details: details(text),
    like,
  });
  if (!added.ok) throw new Error(added.remarks[0]?.message);
  return { pull: (await made.book.pull(added.value.id))!, codes: added.remarks.map(({ code }) => code) };
};

test('all that two pulls of a day have in common is taken, and nothing that is one pull’s own', async () => {
  const { pull } = await enter({ recordedAt: '2026-03-14T10:40:00+01:00' });
  const before = (await made.book.pullHeads()).find(({ name }) => name === 'Pull 6')!;
  for (const field of [
    'combinationId',
    'setUpId',
    'sessionId',
    'cell',
    'operator',
    'tune',
    'places',
    'sweep',
    'weather',
  ] as const)
    expect(pull[field], field).toEqual(before[field]);
  expect(pull.name).toBe('Pull 7');
  // A factor goes with the air of its moment.
  expect(pull.carried).toEqual({ standard: 'sae-j1349', factor: null });
  expect([pull.notes, pull.events, pull.outcome, pull.fileHash]).toEqual([[], [], 'completed', null]);
});

test('the air of two hours ago is not taken, and that is said', async () => {
  const { pull, codes } = await enter({ recordedAt: '2026-03-14T12:30:00+01:00' });
  expect(pull.weather).toBeNull();
  expect(codes).toContain('air-too-old');
  const told = await enter({
    recordedAt: '2026-03-14T12:40:00+01:00',
    weather: { pressure: '98 kPa', temperature: '20 C' },
  });
  expect(told.codes).not.toContain('air-too-old');
  expect(told.pull.weather?.pressure).toBe(98_000);
});

test('what is said stands; another combination leaves the set-up behind', async () => {
  const { pull } = await enter({ combinationId: 'Long cam', tune: { jets: '82' }, cell: null });
  const long = (await made.book.combinations()).find(({ name }) => name === 'Long cam')!;
  expect(pull).toMatchObject({ combinationId: long.id, setUpId: null, cell: null });
  expect(pull.tune).toEqual({ sparkAdvance: '26 deg', jets: '82' });
});

test('a file goes in like another pull, numbered where it has no name', async () => {
  const file = { name: 'run-7.csv', bytes: stepTestFile(1.1), like: 'Pull 6' };
  const put = await importFile(made.book, { ...file, details: { recordedAt: '2026-03-14T10:20:00+01:00' } });
  expect(put.ok && put.value.pulls[0]?.name).toBe('Pull 7');
  expect((await importFile(made.book, { ...file, bytes: stepTestFile(1.2), like: 'Pull 60' })).ok).toBe(
    false,
  );
});

test('a form is filled with what comes back as the same figures', async () => {
  const report = await likeReport(
    made.book,
    'last',
    { units: 'us', decimalMark: '.' },
    '2026-03-14T11:00:00+01:00',
  );
  if (!report.ok) throw new Error('refused');
  const { fields } = report.value;
  expect(fields.name).toBe('Pull 7');
  expect(fields).toMatchObject({ setUp: 'first fitting', standard: 'sae-j1349', humidity: '68 °F wet bulb' });
  expect(fields).toMatchObject({ pressure: '29.4 inHg', temperature: '86 °F', altitude: '300 m' });
  const { pressure, temperature, humidity, altitude } = fields;
  const again = details({ weather: { pressure, temperature, humidity, altitude } }).weather!;
  const before = (await made.book.pullHeads())[0]!.weather!;
  expect(again.pressure).toBeCloseTo(before.pressure, 6);
  expect(again.temperature).toBeCloseTo(before.temperature, 9);
});

test('what is written down can be cleared, field by field, and the rest stays', async () => {
  const cleared = details({
    cell: ' ',
    operator: null,
    weather: null,
    tune: { sparkAdvance: null, jets: '82' },
  });
  expect((await amendPull(made.book, 'Pull 6', cleared, 'for another pull')).ok).toBe(true);
  const [head] = await made.book.pullHeads();
  expect(head).toMatchObject({ cell: null, operator: null, weather: null, sessionId: null });
  expect([head!.tune, head!.places]).toEqual([{ jets: '82' }, { boostTap: 'plenum' }]);
});

test('what is written down of a pull comes back as it was entered', async () => {
  const report = await writtenReport(made.book, 'Pull 6', 'us');
  expect(report.ok && report.value.fields).toMatchObject({
    name: 'Pull 6',
    recordedAt: '2026-03-14T10:00:00+01:00',
    factor: '1.021',
    momentOfInertia: '0.31 kg·m²',
    outcome: 'aborted',
  });
});
