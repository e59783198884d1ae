import { type OutColumn, type OutTable, tablesToCsv, workbookOf } from '@pullbook/formats';
import fc from 'fast-check';
import readWorkbook from 'read-excel-file/node';
import { expect, test } from 'vitest';
import { doubleOf, type Metadata, readByOther, XSD } from './read-by-other.ts';

/**
 * Tables for other programs, read by other programs: workbooks by read-excel-file 9.3.17, CSV by rdf-parser-csvw. What a
 * cell must be is known from the table that was written.
 */
const AT = '2026-03-14T10:42:00+01:00';

const column = (name: string, kind: OutColumn['kind'], unit = ''): OutColumn => ({
  name,
  title: name,
  unit,
  qudt: null,
  kind,
});

const TRICKY = [
  '=1+1',
  '+4',
  '-4',
  '@x',
  '\tx',
  "'quoted",
  '_x0041_',
  'a"b,c\nd',
  '漢字 🛠',
  '<&>',
  ' ',
  '007',
  'true',
  '1e5',
];

const table: OutTable = {
  title: 'All: kinds',
  columns: [column('power', 'number', 'kW'), column('text', 'text'), column('when', 'date')],
  rows: TRICKY.map((text, at) => [
    [0.1 + 0.2, -0, 5e-324, 1.797_693_134_862_315_7e308, null, 123_456_789.123_456_79][at % 6]!,
    text,
    at % 2 === 0 ? AT : null,
  ]),
};

const readBack = async (bytes: Uint8Array) => readWorkbook(Buffer.from(bytes));

test('a workbook has numbers, texts and dates as they are, text never a formula; the same tables give the same bytes', async () => {
  const { bytes, remarks } = await workbookOf([table], { title: '=odd', at: AT });
  expect(remarks).toEqual([]);
  const [sheet] = await readBack(bytes);
  expect(sheet!.sheet).toBe('All kinds');
  expect(sheet!.data[0]).toEqual(['power [kW]', 'text', 'when']);
  for (const [at, [number, text, when]] of table.rows.entries()) {
    const row = sheet!.data[at + 1]!;
    // The sheet has no minus nothing.
    expect(row[0]).toBe(number === 0 ? 0 : number);
    // This reader trims text.
    expect(row[1] ?? '').toBe((text as string).trim());
    // As the clock on the wall showed, to the thousandth of a second that this reader cuts off.
    if (when === null) expect(row[2]).toBeNull();
    else
      expect(
        Math.abs((row[2] as unknown as Date).getTime() - Date.UTC(2026, 2, 14, 10, 42)),
      ).toBeLessThanOrEqual(1);
  }
  expect((await workbookOf([table], { title: '=odd', at: AT })).bytes).toEqual(bytes);
});

test('a sheet that would be too wide says so, and what no sheet can hold as text is replaced', async () => {
  const columns = Array.from({ length: 16_390 }, (_, at) => column(`c${at}`, 'number'));
  const wide = await workbookOf([{ title: 'wide', columns, rows: [[1]] }], { title: '', at: AT });
  expect(wide.remarks).toMatchObject([{ code: 'sheet-cut', level: 'caution' }]);
  const odd = {
    title: 'odd',
    columns: [column('text', 'text')],
    rows: [['a\u0000b\ud800c'], ['x'.repeat(40_000)]],
  };
  const [sheet] = await readBack((await workbookOf([odd], { title: '', at: AT })).bytes);
  expect(sheet!.data[1]).toEqual(['a\ufffdb\ufffdc']);
  expect(sheet!.data[2]![0]).toHaveLength(32_767);
});

test('whatever the figures, another reader finds them to the last digit', async () => {
  const figures = fc.array(
    fc.array(fc.double({ noDefaultInfinity: true, noNaN: true }), { minLength: 2, maxLength: 2 }),
    {
      minLength: 1,
      maxLength: 20,
    },
  );
  await fc.assert(
    fc.asyncProperty(figures, async (rows) => {
      const plain = { title: 'Speeds', columns: [column('a', 'number'), column('b', 'number')], rows };
      const [sheet] = await readBack((await workbookOf([plain], { title: '', at: AT })).bytes);
      expect(sheet!.data.slice(1)).toEqual(rows.map((row) => row.map((value) => (value === 0 ? 0 : value))));
    }),
    { numRuns: 30 },
  );
});

test('the same tables as CSV: another reader finds every value by the metadata, with its datatype', async () => {
  const files = tablesToCsv([table, { ...table, title: 'all: KINDS' }]);
  const text = (path: string) => new TextDecoder().decode(files.find((one) => one.path === path)!.bytes);
  const names = files.map(({ path }) => path);
  expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(4);
  const metadata = JSON.parse(text(names[1]!)) as Metadata;
  const rows = await readByOther(text(names[0]!), metadata);
  expect(rows).toHaveLength(table.rows.length);
  for (const [at, [number, words, when]] of table.rows.entries()) {
    const row = rows[at]!;
    expect(row.get('power') ? doubleOf(row.get('power')!.value) : null).toBe(number);
    if (number !== null) expect(row.get('power')!.type).toBe(`${XSD}double`);
    // A quote sign stands before what would begin like a formula, and nothing else is changed.
    const read = row.get('text');
    // A field of blanks is none to this reader.
    if (words === ' ') continue;
    expect(read!.type).toBe(`${XSD}string`);
    expect([words, `'${words}`]).toContain(read!.value);
    expect(read!.value).not.toMatch(/^[=+\-@\t\r]/);
    expect(row.get('when')?.value ?? null).toBe(when);
    if (when !== null) expect(row.get('when')!.type).toBe(`${XSD}dateTime`);
  }
});
