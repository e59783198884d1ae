import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readTextFile } from '../read-text-file.ts';
import { bytesOfText } from '../test-bytes.ts';
import { TextTableReader } from '../text-table-reader.ts';
import { cellNumber } from './cell-number.ts';
import { PlainNumbers } from './plain-number.ts';

const figure = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
  fc.double({ min: -1e5, max: 1e5, noNaN: true }).map((value) => value.toFixed(3)),
  fc.double({ min: -1e5, max: 1e5, noNaN: true }).map((value) => value.toExponential(6)),
  fc
    .tuple(fc.bigInt({ min: -(10n ** 24n), max: 10n ** 24n }), fc.nat(400))
    .map(([whole, cut]) => `${whole}.${cut}`),
  fc.integer().map(String),
  fc.constantFrom(
    '0',
    '-0',
    '+5',
    '.5',
    '5.',
    '-.25',
    '007',
    '1e22',
    '1e-22',
    '1e23',
    '9007199254740993',
    '4.9e-324',
  ),
);

test('a number made from digits is the double that Number gives', () => {
  const numbers = new PlainNumbers();
  fc.assert(
    fc.property(figure, (text) => {
      const bytes = bytesOfText(`${text};`);
      const value = numbers.at(bytes, 0, '.'.charCodeAt(0));
      expect(Object.is(value, Number(text))).toBe(true);
      expect(numbers.end).toBe(text.length);
    }),
    { seed: 7, numRuns: 20_000 },
  );
});

test.each(['', '-', '.', 'e5', 'x', '1e', '1e+', '1e999', '-1e999'])('“%s” is no plain number', (text) => {
  expect(new PlainNumbers().at(bytesOfText(`${text};`), 0, '.'.charCodeAt(0))).toBe(Number.NaN);
});

describe('the quick way gives what a splitter and the careful reading of each cell give', () => {
  const odd = fc.constantFrom(
    '',
    ' ',
    '-',
    'n/a',
    'err',
    '1,234',
    '12 %',
    ' 7',
    '8 ',
    '"9"',
    '"a""b"',
    '0x1A',
    '5"',
    '1\u00a0000',
  );
  const cell = fc.oneof({ weight: 12, arbitrary: figure }, { weight: 1, arbitrary: odd });
  const table = fc.record({
    delimiter: fc.constantFrom(',', ';', '\t', '|'),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
    rows: fc.array(fc.array(cell, { minLength: 4, maxLength: 4 }), { minLength: 1, maxLength: 30 }),
    pieces: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 5 }),
    ending: fc.boolean(),
  });
  const lead = Array.from({ length: 40 }, (_, row) => [2000 + 10 * row, 300.5, 60.25, 1].map(String));

  test('random texts, whole and in pieces', () => {
    fc.assert(
      fc.property(table, ({ delimiter, lineEnd, rows, pieces, ending }) => {
        const clean = rows.map((row) => row.map((text) => (text.includes(delimiter) ? '1' : text)));
        const lines = [['rpm', 'Nm', 'kW', 'x'], ...lead, ...clean].map((row) => row.join(delimiter));
        const bytes = bytesOfText(lines.join(lineEnd) + (ending ? lineEnd : ''));
        const whole = readTextFile(bytes, 'a.csv');
        if (!whole.ok) throw new Error(JSON.stringify(whole.remarks));

        const reader = new TextTableReader('a.csv');
        for (let at = 0, turn = 0; at < bytes.length; turn++) {
          const length = pieces[turn % pieces.length]!;
          reader.feed(bytes.subarray(at, at + length));
          at += length;
        }
        expect(reader.finish()).toEqual(whole);

        const split = new Map(
          lines.slice(1).map((line, row) => {
            const options = { delimiter, relax_quotes: true, relax_column_count: true };
            return [row + 2, (parse(line, options) as string[][])[0] ?? ['']];
          }),
        );
        const { lineOfRow, columns } = whole.value;
        for (const [row, line] of lineOfRow.entries()) {
          const wanted = columns.map((_, column) => cellNumber(split.get(line)?.[column] ?? '', '.'));
          expect(columns.map(({ values }) => values[row])).toEqual(wanted);
        }
        // A row that was left out holds no reading, or holds words.
        for (const [line, cells] of split)
          if (!lineOfRow.includes(line))
            expect(cells.slice(0, 2).some((text) => Number.isNaN(cellNumber(text, '.')))).toBe(true);
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});
