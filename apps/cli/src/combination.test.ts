import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, capturedJson } from './testing/captured.ts';

const samples = new URL('../../../samples/combinations/', import.meta.url);
const sample = (name: string) => new URL(name, samples).pathname;

let folder = '';
const book = (): string[] => ['--book', join(folder, 'book')];
const combination = (...argv: string[]) => capturedJson(['combination', ...argv, ...book()]);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-combination-'));
  const added = await combination('add', sample('straight-six.yaml'), '--engine', 'Six');
  expect(added.code).toBe(0);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test('the same as another, but: only the changed lines, as they will read, and its packages', async () => {
  const kit = ['package', 'add', 'Cam kit', '--covers', 'cam', ...book()];
  expect((await captured(kit)).code).toBe(0);
  const base = 'Straight six, base cam';
  const first = await combination(
    ...['add', '--from', base, '--name', 'With the kit', '--set', 'cam.liftIntake=12 mm'],
    ...['--package', 'Cam kit'],
  );
  expect(first.json.changes).toMatchObject([{ section: 'cam', before: '11.2 mm', after: '12 mm' }]);
  const second = await combination(
    ...['add', '--from', 'With the kit', '--name', 'With the kit, longer'],
    ...['--set', 'cam.durationIntake=284 deg (data sheet)', '--drop', 'cam.durationExhaust'],
  );
  expect(second.code).toBe(0);
  expect(second.json.changes).toMatchObject([
    { field: 'durationIntake', before: '248°', after: '284 deg' },
    { field: 'durationExhaust', before: '252°', after: null },
  ]);
  const { json } = await combination('show', second.json.id);
  expect(json.packages).toEqual(['Cam kit']);
  expect(json.madeFrom.name).toBe('With the kit');
  const cam = json.sections.find((one: { title: string }) => one.title === 'Cam').rows;
  expect(cam[0]).toMatchObject({ label: 'Intake duration', text: '284 deg', origin: 'data sheet' });
  const listed = await capturedJson(['package', 'list', ...book()]);
  expect(listed.json.packages).toMatchObject([{ name: 'Cam kit', covers: ['cam'] }]);
});

test('a flow sheet from a file, its test pressure told beside it', async () => {
  const from = ['add', '--from', 'Straight six, base cam', '--name', 'Ported'];
  const flow = ['--flow-intake', sample('flow-intake.csv')];
  const without = await captured(['combination', ...from, ...flow, ...book()]);
  expect(without.code).not.toBe(0);
  expect(without.err).toMatch(/testPressure: .*28 inH2O/);
  const added = await combination(...from, ...flow, '--set', 'heads.flowIntake.testPressure=10 inH2O');
  expect(added.json.changes).toMatchObject([{ field: 'flowIntake', after: '6 points at 10 inH2O' }]);
  const shown = await captured(['combination', 'show', 'Ported', '--units', 'si', ...book()]);
  expect(shown.out).toMatch(/Flow sheet, intake\n.*At 28 inH2O, m³\/h/);
  // 24 L/s are 86.4 m³/h, at 28 inches of water √2.8 times that.
  expect(shown.out).toMatch(/2\.00 mm\s+86\.4\s+144\.6/);
});

test('a line is mended on the command line', async () => {
  const amended = await combination(
    ...['amend', 'Straight six, base cam', '--set', 'shortBlock.stroke=88.1 mm (measured)'],
    ...['--reason', 'measured anew'],
  );
  expect(amended.json.revision).toBe(2);
  const yaml = await captured(['combination', 'show', 'Straight six, base cam', '--yaml', ...book()]);
  expect(yaml.out).toMatch(/stroke:\n\s+value: 88\.1 mm\n\s+origin: measured/);
});

test('a sheet is looked at without keeping it', async () => {
  const good = await combination('check', sample('straight-six-supercharged.yaml'), '--from', 'Ported');
  expect(good).toMatchObject({ code: 0, json: { complete: true } });
  expect(good.json.changes.map((one: { section: string }) => one.section)).toContain('supercharger');
  const bad = await capturedJson(['combination', 'check', sample('invalid-wrong-unit.yaml')]);
  expect(bad).toMatchObject({ code: 1, json: { complete: false, changes: null } });
  expect(bad.json.remarks[0]).toMatchObject({ place: 'shortBlock.bore', level: 'refusal', line: 6 });
});

test('the printed schema is the published one', async () => {
  const printed = await captured(['combination', 'schema']);
  const published = await readFile(new URL('../../../docs/combination.schema.json', import.meta.url), 'utf8');
  expect(JSON.parse(printed.out)).toEqual(JSON.parse(published));
});

test.each([
  [['add'], /Give the file of a sheet, or the combination it is the same as/],
  [['add', '--from', 'Ported', '--set', 'cam.profile=x'], /--name/],
  [['add', '--from', 'Nothing', '--name', 'x'], /Nothing/],
  [['add', '--from', 'Ported', '--name', 'x', '--set', 'profile=x'], /not a line of a sheet/],
  [['add', '--from', 'Ported', '--name', 'x', '--set', 'shortBlock.bore=96'], /has no unit/],
  [['amend', 'Ported', '--reason', 'x'], /lines to mend/],
])('%j is refused with what to do', async (argv, message) => {
  const { code, err } = await captured(['combination', ...argv, ...book()]);
  expect(code).not.toBe(0);
  expect(err).toMatch(message);
});

test('a sheet and lines together are refused', async () => {
  const path = join(folder, 'sheet.yaml');
  await writeFile(path, 'schemaVersion: 1\nname: x\n');
  const { code, err } = await captured(['combination', 'add', path, '--set', 'cam.profile=x', ...book()]);
  expect(code).not.toBe(0);
  expect(err).toMatch(/not both/);
});
