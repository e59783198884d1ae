import type { Channel, Pull } from '@pullbook/core/pull';
import { pullToCsv } from '@pullbook/formats';
import { expect, test } from 'vitest';

/**
 * The export's CSV and metadata against the rules of the two standards they follow, not against our own reader:
 * RFC 4180 (October 2005) for the CSV, and the W3C Recommendation "Metadata Vocabulary for Tabular Data" (17 December
 * 2015) with "Model for Tabular Data and Metadata on the Web" for the rest. Rules from memory, section numbers beside.
 */
const channel = (
  meaning: Channel['meaning'],
  kind: Channel['kind'],
  name: string,
  values: number[],
  unit = '',
): Channel => ({
  meaning,
  kind,
  name,
  unit,
  values: Float64Array.from(values),
  origin: 'measured',
}); // prettier-ignore

const VALUES = [1 / 3, 5e-324, 1.7976931348623157e308, -0.1, Number.NaN, 123456.789];
const CHANNELS = [
  channel('engineSpeed', 'engineSpeed', 'Engine speed', [2000, 2100, 2200, 2300, 2400, 2500], 'rpm'),
  channel('torque', 'torque', 'Torque, "brake"', VALUES, 'lb-ft'),
  channel('exhaustTemperature', 'temperature', 'EGT\n1', VALUES, '°F'),
  channel('exhaustTemperature', 'temperature', 'EGT\n2', VALUES, '°F'),
  channel('other', 'ratio', '=HYPERLINK("x")', VALUES, 'counts'),
];

// Only what pullToCsv looks at matters here.
const { csv, metadata } = pullToCsv({ id: 'pull-1', name: 'Pull 1', channels: CHANNELS } as unknown as Pull);
const described = metadata as {
  '@context': unknown;
  url: string;
  tableSchema: { columns: Record<string, unknown>[] };
};

/** RFC 4180 section 2, read by its grammar; a bare line feed ends a record too, as CSVW's dialect states. */
function rfc4180(text: string): string[][] {
  const records: string[][] = [[]];
  const field = /("((?:[^"]|"")*)"|[^",\r\n]*)(,|\r?\n|$)/y;
  while (field.lastIndex < text.length) {
    const match = field.exec(text);
    if (!match) throw new Error(`not RFC 4180 at ${field.lastIndex}`);
    records.at(-1)?.push(match[2] === undefined ? (match[1] ?? '') : match[2].replaceAll('""', '"'));
    if (match[3] !== ',' && field.lastIndex < text.length) records.push([]);
    if (match[3] === '') break;
  }
  return records;
}

const [header = [], ...rows] = rfc4180(csv);

test('RFC 4180, 2.4: every record has the same number of fields', () => {
  expect(rows).toHaveLength(6);
  for (const row of rows) expect(row).toHaveLength(5);
});

test('an independent reading gives the same doubles, bit for bit', () => {
  CHANNELS.forEach(({ values }, column) => {
    const read = rows.map((row) => (row[column] === '' ? Number.NaN : Number(row[column])));
    expect(Float64Array.from(read)).toEqual(values);
  });
});

test('CSVW 5.2: the context is the vocabulary of CSV on the Web', () => {
  expect(described['@context']).toEqual(['http://www.w3.org/ns/csvw', { '@language': 'en' }]);
});

test('CSVW model 5.3: metadata stands at {url}-metadata.json, so url is the name of the file alone', () => {
  expect(described.url).toBe('pull-1.csv');
});

test('CSVW 5.6: names are unique, fit for a URI template, and do not begin with an underscore', () => {
  const names = described.tableSchema.columns.map(({ name }) => name as string);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[A-Za-z0-9][A-Za-z0-9_.]*$/);
});

test('CSVW 5.6: the title of a column is its header in the file', () => {
  expect(described.tableSchema.columns.map(({ titles }) => titles)).toEqual(header);
});

test('CSVW 5.11: the datatype is one that is built in, and every field is one of XML Schema’s doubles', () => {
  for (const { datatype, null: missing } of described.tableSchema.columns)
    expect([datatype, missing]).toEqual(['double', '']);
  for (const field of rows.flat())
    expect(field).toMatch(/^(|-?INF|[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?)$/);
});

test('CSVW 5.8: other properties are prefixed by the context or are addresses; units are in them', () => {
  const own = ['name', 'titles', 'datatype', 'null'];
  for (const column of described.tableSchema.columns) {
    for (const key of Object.keys(column))
      if (!own.includes(key)) expect(key).toMatch(/^(schema:|http:\/\/)/);
  }
  expect(described.tableSchema.columns.map((column) => column['schema:unitText'])).toEqual([
    'r/min',
    'N·m',
    'K',
    'K',
    'counts',
  ]);
});

test('no header begins as a formula', () => {
  for (const title of header) expect(title).not.toMatch(/^[=+\-@\t\r]/);
});
