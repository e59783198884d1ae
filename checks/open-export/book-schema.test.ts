import { readFileSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bookSchema } from '@pullbook/formats';
import { exportBook, makeDemoBook, openBook } from '@pullbook/workshop';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, onTestFinished, test } from 'vitest';

/**
 * `book.json` against the published JSON Schema, by a validator of others: Ajv 8.20.0, draft 2020-12. `strict` also
 * refuses a schema with words that the draft does not know.
 */
const published = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'docs', 'book.schema.json'), 'utf8'),
);
const validate = new Ajv2020({ strict: true, allErrors: true, strictTypes: false }).compile(published);

async function demoExport(): Promise<Record<string, never[]>> {
  const folder = await mkdtemp(join(tmpdir(), 'pullbook-schema-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  await makeDemoBook(join(folder, 'book'));
  const book = await openBook(join(folder, 'book'));
  try {
    await exportBook(book, join(folder, 'export'));
  } finally {
    await book.close();
  }
  return JSON.parse(await readFile(join(folder, 'export', 'book.json'), 'utf8'));
}

test('the published schema is the one in the program', () => expect(published).toEqual(bookSchema()));

test('the export of the demo book is valid, and has something of most kinds', async () => {
  const json = await demoExport();
  validate(json);
  expect(validate.errors).toBeNull();
  for (const list of ['engines', 'combinations', 'setUps', 'sessions', 'pulls', 'files', 'trials', 'log'])
    expect(json[list]!.length).toBeGreaterThan(0);
});

test.each([
  ['a unit missing in a key', (json: string) => json.replace('"momentOfInertiaKgM2"', '"momentOfInertia"')],
  [
    'a meaning that there is not',
    (json: string) => json.replaceAll('"meaning":"torque"', '"meaning":"twist"'),
  ],
  ['a number as text', (json: string) => json.replace(/"pressurePa":[\d.]+/, '"pressurePa":"98 kPa"')],
  ['another version', (json: string) => json.replace('"schemaVersion":1', '"schemaVersion":9')],
])('%s is not', async (_, spoil) => {
  const text = JSON.stringify(await demoExport());
  expect(spoil(text)).not.toBe(text);
  expect(validate(JSON.parse(spoil(text)))).toBe(false);
});
