import { describe, expect, test } from 'vitest';
import { readSheet } from './read-sheet.ts';
import { testSheet } from './test-sheet.ts';
import { whatChanged } from './what-changed.ts';

const POINTS = 'lift mm, flow L/s\n2, 28\n4, 56\n6, 81';
const read = (flowIntake: unknown) => readSheet({ schemaVersion: 1, name: 'six', heads: { flowIntake } });

function refusal(flowIntake: unknown): string {
  const result = read(flowIntake);
  expect(result.ok).toBe(false);
  return result.remarks.find(({ level }) => level === 'refusal')!.message;
}

function columns(points: string) {
  const result = read({ testPressure: '28 inH2O', points });
  if (!result.ok) throw new Error(result.remarks[0]!.message);
  return result.value.sections.heads!.flowIntake!.table!.columns.map(({ values }) =>
    values.map((value) => Number(value.toPrecision(9))),
  );
}

describe('a table', () => {
  test('keeps what was entered, with its figures inside beside it', () => {
    const result = read({ origin: 'measured', testPressure: '28 inH2O', entry: true, points: POINTS });
    const value = result.ok ? result.value.sections.heads!.flowIntake! : null;
    expect(value).toMatchObject({
      text: '3 points at 28 inH2O',
      value: null,
      kind: 'table',
      origin: 'measured',
      table: { points: POINTS, details: { testPressure: { text: '28 inH2O' }, entry: { text: 'yes' } } },
    });
  });

  test.each([
    ['tabs', 'Lift (mm)\tFlow (L/s)\n2\t28\n4\t56\n6\t81'],
    ['semicolons with decimal commas', 'Valve lift [mm];Flow [L/s]\n2,0;28,0\n4,0;56\n6;81'],
    ['spaces', 'lift mm   flow L/s\n 2  28\n 4  56\n 6 81'],
    [
      'columns the other way round, one more beside, empty lines',
      'flow L/s,port,lift cm\n\n28,1,0.2\n56,1,0.4\r\n81,1,0.6\n',
    ],
    ['trailing commas', 'lift mm,flow L/s\n2,28,\n4,56,\n6,81,'],
  ])('is read from %s', (_, points) => {
    expect(columns(points)).toEqual([
      [0.002, 0.004, 0.006],
      [0.028, 0.056, 0.081],
    ]);
  });

  test('unknown is legal, a text is not', () => {
    expect(read('unknown').ok).toBe(true);
    expect(read({ value: 'unknown', origin: 'remembered' }).ok).toBe(true);
    expect(refusal('280 cfm')).toMatch(/"280 cfm" is not a table.*testPressure: 28 inH2O.*points/);
  });

  test('the test pressure must be told; unknown is told', () => {
    expect(refusal({ points: POINTS })).toMatch(/^heads\.flowIntake\.testPressure: .*must be told.*28 inH2O/);
    expect(read({ testPressure: 'unknown', points: POINTS }).ok).toBe(true);
    expect(refusal({ testPressure: '28', points: POINTS })).toMatch(/testPressure: 28 has no unit/);
  });

  test.each([
    ['a heading without units', 'lift, flow\n2, 28\n4, 56', /does not name lift with a unit.*mm/],
    ['a unit of another kind', 'lift kPa, flow L/s\n2, 28\n4, 56', /does not name lift/],
    ['no heading', '2, 28\n4, 56\n6, 81', /does not name lift/],
    ['a word', 'lift mm, flow L/s\n2, 28\n4, much', /line 3, "4, much", is not a point/],
    ['a cell too few', 'lift mm, flow L/s\n2, 28\n4', /line 3, "4", is not a point: 2 numbers/],
    ['a lift that falls', 'lift mm, flow L/s\n4, 56\n2, 28', /line 3.*does not rise/],
    ['a lift in metres', 'lift m, flow L/s\n2, 28\n4, 56', /line 2.*cannot be. Check the unit/],
    ['one point', 'lift mm, flow L/s\n2, 28', /two points or more/],
    ['nothing', '', /two points or more/],
  ])('%s is refused with what to write', (_, points, message) => {
    const said = refusal({ testPressure: '28 inH2O', points });
    expect(said).toMatch(message);
    expect(said).toMatch(/^heads\.flowIntake\.points: .*Write for example "lift mm, flow L\/s"/);
  });

  test('a line it does not have is refused with those it has', () => {
    expect(refusal({ testPressure: '28 inH2O', depression: '28', points: POINTS })).toMatch(
      /flowIntake\.depression: .*testPressure, bore/,
    );
  });
});

describe('what changed in a table', () => {
  const sheet = (points: string, more: object = {}) =>
    testSheet({ heads: { flowIntake: { testPressure: '28 inH2O', points, ...more } } });
  const change = (after: ReturnType<typeof sheet>) => whatChanged(sheet(POINTS), after, [])[0];

  test('one line that says where', () => {
    expect(change(sheet('lift mm, flow L/s\n2, 28\n4, 58\n6, 85'))).toMatchObject({
      label: 'Heads, flow sheet, intake',
      before: '3 points at 28 inH2O',
      after: '3 points at 28 inH2O, differs at 4 to 6 mm',
    });
    expect(change(sheet('lift mm, flow L/s\n2, 28\n4, 58\n6, 81'))!.after).toMatch(/differs at 4 mm$/);
    expect(change(sheet('lift mm, flow L/s\n2, 28\n5, 70'))!.after).toMatch(/2 points.*at other points$/);
    expect(change(sheet(POINTS, { bore: '96 mm' }))!.after).toMatch(/bore not told → 96 mm$/);
  });

  test('the same points in other units are none', () => {
    expect(change(sheet('lift cm, flow L/min\n0.2, 1680\n0.4, 3360\n0.6, 4860'))).toBeUndefined();
  });
});
