import { describe, expect, test } from 'vitest';
import { guessedMapping, pullsFromReading, readTextFile, TextTableReader } from './index.ts';
import { bytesOfText, codesOf, pullsOf, readingOf } from './test-bytes.ts';

/** Feeds text piece by piece, made as it goes, and gives what came of it. */
function readMade(name: string, pieces: Iterable<Uint8Array>) {
  const reader = new TextTableReader(name);
  let fed = 0;
  for (const piece of pieces) {
    fed += piece.length;
    if (!reader.feed(piece)) break;
  }
  return { result: reader.finish(), fed };
}

function* repeated(head: string, body: Uint8Array, bytes: number): Generator<Uint8Array> {
  yield bytesOfText(head);
  for (let made = 0; made < bytes; made += body.length) yield body;
}

const block = (row: string, rows: number): Uint8Array => bytesOfText(row.repeat(rows));

describe('a header that stands again starts a new pull', () => {
  const rows = (torque: number) => `2000,${torque}\n2100,${torque + 1}\n2200,${torque + 2}\n`;

  test('numbered where nothing names them', () => {
    const reading = readingOf(`rpm,Nm\n${rows(300)}rpm,Nm\n${rows(320)}`);
    expect(reading.groups).toEqual([
      { name: 'Pull 1', fromRow: 0, toRow: 2 },
      { name: 'Pull 2', fromRow: 3, toRow: 5 },
    ]);
    expect(reading.remarks).toMatchObject([{ code: 'repeated-header', line: 5, column: 1 }]);
  });

  test('named by the line above each, with a row of units', () => {
    const text = `Run 7\nrpm,torque\nrpm,Nm\n${rows(300)}\nRun 8\nrpm,torque\nrpm,Nm\n${rows(320)}`;
    const pulls = pullsOf(text);
    expect(pulls.map(({ name }) => name)).toEqual(['Run 7', 'Run 8']);
    expect([...pulls[1]!.channels[1]!.values]).toEqual([320, 321, 322]);
  });

  test('not at the top of a page, where the speed or the time goes on', () => {
    const page = (rows: string) => `rpm,Nm\n${rows}`;
    expect(
      readingOf(page('2000,300\n2100,301\n') + page('2200,302\n') + page('2300,303\n2000,9\n')).groups,
    ).toEqual([{ name: '', fromRow: 0, toRow: 4 }]);
    const timed = (rows: string) => `Time (s),rpm,Nm\n${rows}`;
    const reading = readingOf(
      timed('0.0,2000,300\n0.1,2050,301\n') + timed('0.2,2100,302\n') + timed('0.0,2150,303\n0.1,2200,304\n'),
    );
    expect(reading.groups.map(({ fromRow, toRow }) => [fromRow, toRow])).toEqual([
      [0, 2],
      [3, 4],
    ]);
  });

  test('a header with nothing under it starts none', () => {
    expect(readingOf(`rpm,Nm\nrpm,Nm\n${rows(300)}rpm,Nm\n`).groups).toHaveLength(1);
  });
});

describe('limits are told with the value, what is allowed, and a place', () => {
  test('a file of 2.1 GB is refused by its length, unread', () => {
    const reader = new TextTableReader('huge.csv', 2.1e9);
    expect(reader.feed(bytesOfText('rpm,Nm\n'))).toBe(false);
    const result = reader.finish();
    expect(result).toMatchObject({ ok: false, remarks: [{ code: 'file-too-large', line: 1 }] });
    expect(result.remarks[0]!.message).toContain('2100 MB');
    expect(result.remarks[0]!.message).toContain('2000 MB');
  });

  test('60 million numbers end the reading where they are reached', () => {
    const wide = `2000${',1'.repeat(1999)}\n`;
    const { result, fed } = readMade('many.csv', repeated('', block(wide, 100), 2e9));
    expect(result).toMatchObject({ ok: false, remarks: [{ code: 'file-too-large', line: 30_001 }] });
    expect(fed).toBeLessThan(130e6);
  });

  test('a gigabyte of zero bytes after the last row is a note', () => {
    const { result } = readMade(
      'cut.csv',
      repeated('rpm,Nm\n2000,300\n2100,305\n', new Uint8Array(16e6), 1e9),
    );
    expect(result.ok && [result.value.rowCount, codesOf(result.value)]).toEqual([2, ['trailing-zero-bytes']]);
  });

  test('a line without an end', () => {
    const { result, fed } = readMade(
      'line.csv',
      repeated('rpm,Nm\n2000,300\n2100,305\n', block('7', 1e6), 2e9),
    );
    expect(result).toMatchObject({ ok: false, remarks: [{ code: 'line-too-long', line: 4 }] });
    expect(fed).toBeLessThan(40e6);
  });

  test('5,000 columns are read, more than 10,000 are not', () => {
    const names = (count: number) =>
      ['rpm', 'Nm', ...Array.from({ length: count - 2 }, (_, at) => `c${at}`)].join();
    const row = (count: number, speed: number) =>
      [speed, 300, ...new Array<number>(count - 2).fill(1.5)].join();
    const table = (count: number, rows: number) =>
      bytesOfText(
        [names(count), ...Array.from({ length: rows }, (_, at) => row(count, 2000 + 10 * at))].join('\n'),
      );
    const reading = readTextFile(table(5000, 200), 'wide.csv');
    expect(reading.ok && [reading.value.columns.length, reading.value.rowCount]).toEqual([5000, 200]);
    expect(reading.ok && pullsFromReading(reading.value, guessedMapping(reading.value)).ok).toBe(true);
    const wider = readTextFile(table(10_001, 3), 'wider.csv');
    expect(wider).toMatchObject({
      ok: false,
      remarks: [{ code: 'too-many-columns', line: 1, column: 10_001 }],
    });
  });
});

describe('odd bytes spoil no more than their cell', () => {
  test('zero bytes in the middle, as after a power cut', () => {
    const reading = readingOf('rpm,Nm\n2000,300\n2100,3\0\0\0\n2200,310\n2300,311\n');
    expect([...reading.columns[1]!.values]).toEqual([300, Number.NaN, 310, 311]);
    expect(reading.remarks).toMatchObject([{ code: 'text-among-numbers', line: 3, column: 2 }]);
  });

  test('one byte that is not UTF-8, far down a file that is', () => {
    const body = block('2000,300,größer\n', 300_000);
    const odd = Uint8Array.from([...bytesOfText('2100,x,gr'), 0xf6, ...bytesOfText('sser\n')]);
    const { result } = readMade('mixed.csv', [
      bytesOfText('rpm,Nm,note\n'),
      body,
      odd,
      block('2200,310,größer\n', 3),
    ]);
    if (!result.ok) throw new Error('refused');
    expect(result.value.layout.encoding).toBe('utf-8');
    expect(result.value.rowCount).toBe(300_004);
    expect(result.value.remarks).toMatchObject([
      { code: 'mixed-encoding', line: 300_002 },
      { code: 'text-among-numbers', line: 300_002, column: 2 },
    ]);
  });
});
