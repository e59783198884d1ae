import { readdirSync, readFileSync } from 'node:fs';
import { matchSchema, readMapText, readMatchText, readPlainText } from '@pullbook/formats';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';

/** The published schema of match files, held against a validator of others (ajv, draft 2020-12). */
const published = JSON.parse(readFileSync(new URL('../../docs/match.schema.json', import.meta.url), 'utf8'));
const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true });
const fits = ajv.compile(published);

const samples = new URL('../../samples/match/', import.meta.url);
const names = readdirSync(samples).filter((name) => /\.(yaml|json)$/.test(name));
const textOf = (name: string) => readFileSync(new URL(name, samples), 'utf8');

function plainOf(text: string): unknown {
  const plain = readPlainText(text);
  if (!plain.ok) throw new Error(plain.remarks[0]!.message);
  return plain.value;
}

function faultsOf(plain: unknown): string[] {
  fits(plain);
  return (fits.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

test('is what the shapes make; if this fails: npx tsx tools/write-match-schema.ts', () => {
  expect(published).toEqual(JSON.parse(JSON.stringify(matchSchema())));
});

test('is a schema by its own draft', () => {
  expect(ajv.validateSchema(published)).toBe(true);
});

test.each(names.filter((name) => readMatchText(textOf(name)).ok))('%s can be read, and fits', (name) => {
  expect(faultsOf(plainOf(textOf(name)))).toEqual([]);
});

/** What a schema cannot say: that a number is impossible, and what stands in a cell of a text. */
const BEYOND_A_SCHEMA = ['invalid-pulley-of-zero.yaml', 'invalid-cell.yaml', 'invalid-weather.yaml'];

test.each(names.filter((name) => !readMatchText(textOf(name)).ok && !BEYOND_A_SCHEMA.includes(name)))(
  '%s cannot be read, and does not fit',
  (name) => expect(faultsOf(plainOf(textOf(name)))).not.toEqual([]),
);

test('what the page about match files shows can be read: the match file, and the map as CSV', () => {
  const page = readFileSync(new URL('../../docs/match-file.md', import.meta.url), 'utf8');
  const [yaml, csv] = ['yaml', 'csv'].map(
    (kind) => new RegExp(`\\n\`\`\`${kind}\\n([\\s\\S]*?)\`\`\`\\n`).exec(page)![1]!,
  );
  const file = readMatchText(yaml!, 'the page');
  expect(file.remarks.filter(({ level }) => level === 'refusal')).toEqual([]);
  expect(faultsOf(plainOf(yaml!))).toEqual([]);
  const map = readMapText(csv!, 'the page');
  expect(map.ok && map.value).toMatchObject({ name: 'Shop blower no. 2', points: [{ flow: 0.106 }] });
});

describe('what does not fit is not read either', () => {
  const file = (more: object) => ({
    schemaVersion: 1,
    combination: 'Six',
    baseline: { pull: 'Pull 3' },
    map: 'Blower',
    ...more,
  });
  test.each<[string, object]>([
    ['a section nobody knows', file({ weathr: {} })],
    ['a newer version', file({ schemaVersion: 2 })],
    ['no baseline', { schemaVersion: 1, combination: 'Six' }],
    ['a pressure without a unit', file({ weather: { pressure: 99, temperature: '25 °C' } })],
    ['weather without a temperature', file({ weather: { pressure: '99 kPa' } })],
    ['a unit of another kind', file({ model: { displacement: '3.8 kg' } })],
    ['half a draw', file({ bands: { draws: 500.5 } })],
    ['a cooler of a word', file({ model: { cooler: 'big' } })],
    ['a tap that is not there', file({ model: { tap: 'exhaust' } })],
    [
      'a rating without its speed',
      file({
        map: {
          rated: {
            flow: '0.4 kg/s',
            pressureRatio: 1.5,
            reference: { pressure: '100 kPa', temperature: '25 °C' },
          },
        },
      }),
    ],
    ['a what-if that is a number', file({ whatIf: [3] })],
    ['a table of rows without their names', file({ baseline: { table: { rows: [[1, 2]] } } })],
  ])('%s', (_, plain) => {
    expect(faultsOf(plain)).not.toEqual([]);
    expect(readMatchText(JSON.stringify(plain)).ok).toBe(false);
  });
});
