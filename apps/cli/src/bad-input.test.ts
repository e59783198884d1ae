import { existsSync } from 'node:fs';
import { chmod, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Database } from '@pullbook/store/driver';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured, capturedJson, sheet, stepTest } from './testing/captured.ts';

let folder = '';
const at = (name: string): string => join(folder, name);
const book = (): string[] => ['--book', at('book')];
const listing = async (): Promise<string> => (await captured(['list', '--json', ...book()])).out;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-bad-'));
  await writeFile(at('good.csv'), stepTest(1));
  expect((await captured(['import', at('good.csv'), ...book()])).code).toBe(0);
});

afterAll(() => rm(folder, { recursive: true, force: true }));

describe('a bad file', () => {
  const files: [name: string, content: string | Buffer, said: RegExp][] = [
    ['empty.csv', '', /empty/i],
    [
      'picture.csv',
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]),
      /PNG|binary|picture|image/i,
    ],
    ['bytes.csv', Buffer.from(Array.from({ length: 400 }, (_, index) => (index * 37) % 256)), /binary|text/i],
    ['header-only.csv', 'rpm,torque_Nm\n', /row|data/i],
    ['one-row.csv', 'rpm,torque_Nm\n3000,400\n', /summary/i],
    ['no-speed.csv', 'oil_C,torque_Nm\n90,400\n91,401\n92,402\n', /speed/i],
    ['absurd.csv', stepTest(1).replace('2000,', '900000,'), /900,?000/],
  ];

  test.each(files)('%s is refused, says why, and touches nothing', async (name, content, said) => {
    await writeFile(at(name), content);
    const before = await listing();
    const { code, json } = await capturedJson(['import', at(name), ...book()]);
    expect(code).toBe(1);
    expect(json.pulls).toEqual([]);
    expect(json.error.message).toMatch(said);
    expect(json.remarks.some((one: { level: string }) => one.level === 'refusal')).toBe(true);
    const people = await captured(['import', at(name), ...book()]);
    expect(people.code).toBe(1);
    expect(people.out + people.err).toMatch(said);
    expect(await listing()).toBe(before);
  });

  test('a missing file and a folder say their path', async () => {
    for (const path of [at('not-there.csv'), folder]) {
      const { code, json } = await capturedJson(['import', path, ...book()]);
      expect(code).toBe(1);
      expect(json.error.message).toContain(path);
    }
  });

  test('among several, the good ones go in and the bad one is reported', async () => {
    await writeFile(at('second.csv'), stepTest(1.01));
    const { code, json } = await capturedJson(['import', at('empty.csv'), at('second.csv'), ...book()]);
    expect(code).toBe(1);
    expect(json.pulls).toHaveLength(1);
    expect(json.files).toEqual([
      { file: 'empty.csv', stored: false, alreadyKnown: false },
      { file: 'second.csv', stored: true, alreadyKnown: false },
    ]);
  });

  test('a dry run stores nothing, not even a book', async () => {
    const { code, json } = await capturedJson(['import', at('good.csv'), '--dry-run', '--book', at('none')]);
    expect(code).toBe(0);
    expect(json.pulls[0].id).toBeNull();
    expect(existsSync(at('none'))).toBe(false);
  });
});

describe('a wrong option of import', () => {
  test.each([
    [['--pressure', '98.2kPa'], 'weather-incomplete'],
    [['--pressure', '98.2 furlong', '--temperature', '30C'], null],
    [['--factor', '1.02'], 'factor-alone'],
    [['--corrected', 'guess'], 'unknown-correction'],
    [['--map', 'Nothing=torque:N·m'], 'column-mapping'],
    [['--map', 'torque=strength:N·m'], 'column-mapping'],
    [['--map', 'torque=torque:furlong'], null],
    [['--combination', 'nothing'], 'unknown-id'],
  ])('%j is refused', async (options, expected) => {
    await writeFile(at('fresh.csv'), stepTest(0.97));
    const before = await listing();
    const { code, json } = await capturedJson(['import', at('fresh.csv'), ...options, ...book()]);
    expect(code).toBe(1);
    if (expected) expect(json.error.code).toBe(expected);
    expect(json.error.message.length).toBeGreaterThan(30);
    expect(await listing()).toBe(before);
  });

  test('a column can be given another meaning and unit', async () => {
    await writeFile(at('pounds.csv'), stepTest(0.5).replace('torque_Nm', 'Load'));
    const { json } = await capturedJson([
      'import',
      at('pounds.csv'),
      '--map',
      'Load=torque:lb-ft',
      ...book(),
    ]);
    // 1 lbf·ft is 1.355 817 948 N·m (NIST SP 811, appendix B.8); the vertex of the parabola is half of 400.
    expect(json.pulls[0].peakTorqueNm).toBeCloseTo(200 * 1.355_817_948, 2);
  });
});

describe('a bad combination', () => {
  test('a wrong unit names field, value and what is accepted', async () => {
    await writeFile(at('wrong.yaml'), sheet('Wrong', 'bore: 96 kg'));
    const { code, json } = await capturedJson([
      'combination',
      'add',
      at('wrong.yaml'),
      '--engine',
      'Six',
      ...book(),
    ]);
    expect(code).toBe(1);
    expect(json.error.message).toMatch(/bore.*96 kg.*mm/s);
    expect(JSON.parse(await listing()).engines).toEqual([]);
  });

  test('a missing bore is legal, and the sheet says what cannot be derived', async () => {
    await writeFile(at('no-bore.yaml'), sheet('No bore', 'bore: unknown'));
    const { code } = await captured(['combination', 'add', at('no-bore.yaml'), '--engine', 'Six', ...book()]);
    expect(code).toBe(0);
    const { out } = await captured(['combination', 'show', 'No bore', ...book()]);
    expect(out).toMatch(/bore/i);
    expect(out).not.toMatch(/NaN|undefined/);
  });

  test('text that is no YAML says the line', async () => {
    await writeFile(at('broken.yaml'), 'name: [unclosed\nshortBlock:\n  bore: 96 mm\n');
    const { code, err } = await captured([
      'combination',
      'add',
      at('broken.yaml'),
      '--engine',
      'Six',
      ...book(),
    ]);
    expect(code).toBe(1);
    expect(err).toMatch(/line \d+/);
  });
});

describe('trouble with the book', () => {
  test.each([
    [['list']],
    [['show', 'x']],
    [['compare', '--baseline', 'a', '--changed', 'b']],
    [['export', '--to', 'x']],
  ])('%j of a book that is not there', async (argv) => {
    const { code, json } = await capturedJson([...argv, '--book', at('nowhere')]);
    expect(code).toBe(1);
    expect(json.error.code).toBe('missing');
    expect(json.error.message).toContain(at('nowhere'));
    expect(existsSync(at('nowhere'))).toBe(false);
  });

  test('an unknown id names the nearest', async () => {
    const { code, json } = await capturedJson(['show', 'goood', ...book()]);
    expect(code).toBe(1);
    expect(json.error.code).toBe('unknown-id');
    expect(json.error.message).toContain('good');
  });

  test('a book another program writes to is said to be locked', async () => {
    await writeFile(at('third.csv'), stepTest(1.02));
    const before = await listing();
    const other = new Database(join(at('book'), 'book.sqlite'));
    other.exec('begin exclusive');
    try {
      const { code, json } = await capturedJson(['import', at('third.csv'), ...book()]);
      expect(code).toBe(1);
      expect(json.error.code).toBe('locked');
    } finally {
      other.exec('rollback');
      other.close();
    }
    expect(await listing()).toBe(before);
    expect((await captured(['import', at('third.csv'), ...book()])).code).toBe(0);
  });

  test('a folder with a file of another program is not a book', async () => {
    await mkdir(at('alien'));
    await writeFile(
      join(at('alien'), 'book.sqlite'),
      'not a database at all, but long enough to be read as one'.repeat(40),
    );
    const { code, json } = await capturedJson(['import', at('good.csv'), '--book', at('alien')]);
    expect(code).toBe(1);
    expect(['damaged', 'not a book']).toContain(json.error.code);
    expect((await readFile(join(at('alien'), 'book.sqlite'), 'utf8')).startsWith('not a database')).toBe(
      true,
    );
  });

  test.skipIf(process.getuid?.() === 0)('a place that may not be written is said', async () => {
    await mkdir(at('closed'));
    await chmod(at('closed'), 0o500);
    const { code, json } = await capturedJson([
      'import',
      at('good.csv'),
      '--book',
      join(at('closed'), 'book'),
    ]);
    expect(code).toBe(1);
    expect(json.error.message).toContain(at('closed'));
  });
});
