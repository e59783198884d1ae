import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guessedMapping, pullsFromReading, readTextFile } from './index.ts';
import { bytesOfText, codesOf, pullsOf, readingOf } from './test-bytes.ts';

describe('one table in any layout reads to the same numbers', () => {
  const columns = [
    { words: ['Engine speed', 'Drehzahl', 'Régime', 'speed'], unit: 'rpm', meaning: 'engineSpeed' },
    { words: ['Torque', 'Drehmoment', 'Couple', 'torque'], unit: 'Nm', meaning: 'torque' },
    { words: ['Power', 'Leistung', 'Puissance', 'power'], unit: 'kW', meaning: 'power' },
    {
      words: ['Oil temp', 'Öltemperatur', 'Température huile', 'oil_temp'],
      unit: '°C',
      meaning: 'oilTemperature',
    },
    { words: ['Boost', 'Ladedruck', 'Pression de suralimentation', 'boost'], unit: 'kPa', meaning: 'boost' },
  ] as const; // prettier-ignore

  const unitStyles = {
    square: (name: string, unit: string) => `${name} [${unit}]`,
    round: (name: string, unit: string) => `${name} (${unit})`,
    comma: (name: string, unit: string) => `"${name}, ${unit}"`,
    underscore: (name: string, unit: string) => `${name}_${unit}`,
    row: (name: string) => name,
  };

  const layout = fc.record({
    delimiter: fc.constantFrom(',', ';', '\t', '|'),
    decimalMark: fc.constantFrom('.', ','),
    encoding: fc.constantFrom('utf-8', 'utf-8 with BOM', 'utf-16le', 'utf-16be', 'windows-1252'),
    style: fc.constantFrom(...(Object.keys(unitStyles) as (keyof typeof unitStyles)[])),
    language: fc.integer({ min: 0, max: 3 }),
    order: fc.shuffledSubarray([0, 1, 2, 3, 4], { minLength: 5 }),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
    preamble: fc.constantFrom([], ['Invented run', 'made for a test']),
    missingRow: fc.integer({ min: 1, max: 11 }),
    missingMark: fc.constantFrom('', '-', 'n/a', 'NaN', '?', '#N/A', '***'),
    steps: fc.integer({ min: 40, max: 400 }),
    scale: fc.double({ min: 0.3, max: 3, noNaN: true }),
  });

  function encoded(text: string, encoding: string): Uint8Array {
    if (encoding === 'windows-1252') return Uint8Array.from(text, (character) => character.charCodeAt(0));
    if (encoding === 'utf-8') return bytesOfText(text);
    if (encoding === 'utf-8 with BOM') return bytesOfText(`\uFEFF${text}`);
    const marked = `\uFEFF${text}`;
    const bytes = new Uint8Array(2 * marked.length);
    const view = new DataView(bytes.buffer);
    for (let at = 0; at < marked.length; at++)
      view.setUint16(2 * at, marked.charCodeAt(at), encoding === 'utf-16le');
    return bytes;
  }

  test('delimiter, decimal mark, encoding, units, order of columns', () => {
    fc.assert(
      fc.property(layout, (how) => {
        const rows = Array.from({ length: 12 }, (_, row) => {
          const speed = 1500 + row * how.steps;
          const torque = Number((how.scale * (300 - (row - 6) ** 2)).toFixed(2));
          return [
            speed,
            torque,
            Number(((torque * speed * Math.PI) / 3e4).toFixed(3)),
            80.25 + row,
            3.5 + row * 2,
          ];
        });
        const shown = (value: number) => {
          if (how.decimalMark === '.') return String(value);
          const text = String(value).replace('.', ',');
          return how.delimiter === ',' ? `"${text}"` : text;
        };
        const names = how.order.map((at) =>
          unitStyles[how.style](columns[at]!.words[how.language]!, columns[at]!.unit),
        );
        const units =
          how.style === 'row' ? [how.order.map((at) => columns[at]!.unit).join(how.delimiter)] : [];
        const body = rows.map((row, index) =>
          how.order
            .map((at) => (at === 4 && index === how.missingRow ? how.missingMark : shown(row[at]!)))
            .join(how.delimiter),
        );
        const text =
          [...how.preamble, names.join(how.delimiter), ...units, ...body].join(how.lineEnd) + how.lineEnd;
        const reading = readTextFile(encoded(text, how.encoding), 'table.csv');
        if (!reading.ok) throw new Error(JSON.stringify(reading.remarks));
        expect(reading.value.rowCount).toBe(12);
        how.order.forEach((at, place) => {
          const column = reading.value.columns[place]!;
          expect(column.guess.meaning).toBe(columns[at]!.meaning);
          const wanted = rows.map((row, index) =>
            at === 4 && index === how.missingRow ? Number.NaN : row[at]!,
          );
          expect([...column.values]).toEqual(wanted);
        });
        const pulls = pullsFromReading(reading.value, guessedMapping(reading.value));
        const oil = pulls.ok && pulls.value[0]!.channels.find(({ meaning }) => meaning === 'oilTemperature');
        expect(oil ? oil.values[0] : undefined).toBeCloseTo(80.25 + 273.15, 9);
      }),
      { seed: 21, numRuns: 200 },
    );
  }); // prettier-ignore

  test('bytes changed at random never make it throw', () => {
    const text =
      'Engine speed [rpm];Torque [Nm];"Power\n[kW]"\n2000;301,5;63,1\n2100;305,0;67,1\n2200;309,9;-\n';
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat({ max: 99 }), fc.nat({ max: 255 })), { minLength: 1, maxLength: 12 }),
        fc.nat({ max: 99 }),
        (changes, cut) => {
          const bytes = bytesOfText(text);
          for (const [at, byte] of changes) bytes[at % bytes.length] = byte;
          const reading = readTextFile(cut < 20 ? bytes.subarray(0, cut * 5) : bytes, 'changed.csv');
          if (!reading.ok) expect(reading.remarks[0]?.level).toBe('refusal');
          else pullsFromReading(reading.value, guessedMapping(reading.value));
        },
      ),
      { seed: 5, numRuns: 400 },
    );
  });
});

describe('what could not be read is told with line and column', () => {
  test('a word among numbers', () => {
    const reading = readingOf('rpm,Nm\n2000,300\n2100,bad\n2200,310\n');
    expect(reading.remarks).toMatchObject([
      { code: 'text-among-numbers', level: 'caution', line: 3, column: 2 },
    ]);
    expect([...reading.columns[1]!.values]).toEqual([300, Number.NaN, 310]);
  });

  test('more than five of a kind are counted', () => {
    const rows = Array.from({ length: 40 }, (_, row) => `${2000 + row},${row % 3 === 2 ? 'err' : 300 + row}`);
    const remarks = readingOf(`rpm,Nm\n${rows.join('\n')}\n`).remarks.filter(
      ({ code }) => code === 'text-among-numbers',
    );
    expect(remarks).toHaveLength(6);
    expect(remarks[5]?.message).toContain('and 8 more like it');
  });

  test('lines are counted through quoted line breaks', () => {
    const reading = readingOf('"Speed\n(rpm)","Torque\n(Nm)"\n2000,300\n2100,bad\n2200,310\n');
    expect(reading.layout).toMatchObject({ headerLine: 1, firstDataLine: 4 });
    expect(reading.remarks[0]).toMatchObject({ line: 5, column: 2 });
    expect([...reading.lineOfRow]).toEqual([4, 5, 6]);
  });

  test('short and long rows', () => {
    const reading = readingOf('rpm,Nm,kW\n2000,300,62.8\n2100,301\n2200,302,69.6,7\n2300,303,73\n');
    expect(reading.remarks.map(({ code, line, column }) => [code, line, column])).toEqual([
      ['short-row', 3, 3],
      ['long-row', 4, 4],
    ]);
  });

  test('a header that has fewer names than the rows have fields', () => {
    expect(codesOf(readingOf('rpm,Nm\n2000,300.5,5\n2100,301.0,2\n2200,302.5,7\n'))).toContain(
      'more-fields-than-header',
    );
  });

  test('a quote sign that stands for inches is no quote', () => {
    const reading = readingOf('Stack 4" long\nrpm,Nm\n2000,300\n2100,305\n');
    expect(reading.preamble).toEqual([{ line: 1, text: 'Stack 4" long' }]);
    expect(reading.rowCount).toBe(2);
  });

  test('zero bytes after the end of a log that was cut off', () => {
    const reading = readTextFile(
      new Uint8Array([...bytesOfText('rpm,Nm\n2000,300\n2100,305\n'), 0, 0, 0]),
      'cut.csv',
    );
    expect(reading.ok && codesOf(reading.value)).toEqual(['trailing-zero-bytes']);
  });

  test('a comma that may part thousands', () => {
    const reading = readingOf('rpm\tboost_kPa\n1,500\t10\n2,500\t20\n3,500\t30\n');
    expect(codesOf(reading)).toContain('decimal-mark-ambiguous');
    expect([...reading.columns[0]!.values]).toEqual([1500, 2500, 3500]);
  });
});

test('a pull without torque and power is kept with a caution', () => {
  const reading = readingOf('rpm,boost_kPa\n2000,10\n2100,12\n');
  const pulls = pullsFromReading(reading, guessedMapping(reading));
  expect(pulls.ok && codesOf(pulls)).toEqual(['no-torque-or-power']);
});

test('a numbered run column parts the pulls', () => {
  const pulls = pullsOf('Run;rpm;Nm\n1;2000;300\n1;2100;301\n2;2000;310\n2;2100;311\n');
  expect(pulls.map(({ name }) => name)).toEqual(['Run 1', 'Run 2']);
  expect([...pulls[1]!.channels.find(({ meaning }) => meaning === 'torque')!.values]).toEqual([310, 311]);
});
