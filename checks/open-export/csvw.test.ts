import type { Channel, Pull } from '@pullbook/core/pull';
import { pullToCsv } from '@pullbook/formats';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { doubleOf, type Metadata, readByOther, XSD } from './read-by-other.ts';

async function expectSameValues(channels: Channel[]) {
  const { csv, metadata } = pullToCsv({ id: 'pull', name: 'Pull', channels } as unknown as Pull, 'pull.csv');
  const described = metadata as Metadata;
  const rows = await readByOther(csv, described);
  expect(rows).toHaveLength(channels[0]!.values.length);
  channels.forEach(({ values }, column) => {
    const name = described.tableSchema.columns[column]!.name;
    const read = rows.map((row) => {
      const cell = row.get(name);
      if (cell) expect(cell.type).toBe(`${XSD}double`);
      return cell ? doubleOf(cell.value) : Number.NaN;
    });
    // Object.is for each: the sign of a zero counts, and a missing reading is missing.
    expect(Float64Array.from(read)).toEqual(values);
  });
}

const channel = (
  meaning: Channel['meaning'],
  kind: Channel['kind'],
  name: string,
  values: number[],
): Channel => ({
  meaning,
  kind,
  name,
  unit: '',
  values: Float64Array.from(values),
  origin: 'measured',
});

test('names with commas, quotes, line breaks and formulas; missing, infinite and extreme values', () =>
  expectSameValues([
    channel('engineSpeed', 'engineSpeed', 'Engine speed', [2000, 2100, 2200, 2300, 2400, 2500]),
    channel('torque', 'torque', 'Torque, "brake"', [
      1 / 3,
      5e-324,
      1.7976931348623157e308,
      -0,
      Number.NaN,
      1e21,
    ]),
    channel('exhaustTemperature', 'temperature', 'EGT 1', [1, 2, Number.POSITIVE_INFINITY, -Infinity, 5, 6]),
    channel('exhaustTemperature', 'temperature', 'EGT 2', [6, 5, 4, 3, 2, 1]),
    channel('other', 'ratio', '=HYPERLINK("x")', [0, 0, 0, 0, 0, Number.NaN]),
  ]));

test('any doubles', () =>
  fc.assert(
    fc.asyncProperty(fc.array(fc.double(), { minLength: 1, maxLength: 20 }), (values) =>
      expectSameValues([
        channel(
          'engineSpeed',
          'engineSpeed',
          'rpm',
          values.map((_, row) => 2000 + row),
        ),
        channel('torque', 'torque', 'torque', values),
      ]),
    ),
    { seed: 7, numRuns: 60 },
  ));
