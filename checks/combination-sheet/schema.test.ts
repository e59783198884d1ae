import { readdirSync, readFileSync } from 'node:fs';
import { FIELDS, readSheet, sheetSchema } from '@pullbook/core/combination';
import { unitsOfKind } from '@pullbook/core/quantity';
import { demoScenario } from '@pullbook/demo';
import { combinationToJson, readCombinationText, readPlainText } from '@pullbook/formats';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';

/** The published schema, held against a validator of others (ajv, draft 2020-12). */
const published = JSON.parse(
  readFileSync(new URL('../../docs/combination.schema.json', import.meta.url), 'utf8'),
);
const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true });
const fits = ajv.compile(published);

const samples = new URL('../../samples/', import.meta.url);
const sampleText = (name: string) => readFileSync(new URL(name, samples), 'utf8');
const names = ['combinations', 'open-data'].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, samples))
    .filter((name) => /\.(yaml|json)$/.test(name))
    .map((name) => `${folder}/${name}`),
);

function faultsOf(plain: unknown): string[] {
  fits(plain);
  return (fits.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

const minimal = (section: string, fields: Record<string, unknown>) => ({
  schemaVersion: 1,
  name: 'six',
  [section]: fields,
});

describe('the published schema', () => {
  test('is what the table of fields makes; if this fails: npx pullbook combination schema > docs/combination.schema.json', () => {
    expect(published).toEqual(sheetSchema());
  });

  test('is a schema by its own draft', () => {
    expect(ajv.validateSchema(published)).toBe(true);
  });

  test.each(names)('%s: fits when it can be read, and not when it cannot', (name) => {
    const plain = readPlainText(sampleText(name));
    const sheet = readCombinationText(sampleText(name));
    // What is no YAML has no plain form to hold against a schema.
    if (plain.ok)
      expect(faultsOf(plain.value).length === 0, `${name} ${faultsOf(plain.value)}`).toBe(sheet.ok);
    if (sheet.ok) expect(faultsOf(JSON.parse(combinationToJson(sheet.value)))).toEqual([]);
  });

  test('there are samples of both', () => {
    const readable = names.filter((name) => readCombinationText(sampleText(name)).ok);
    expect(readable.length).toBeGreaterThan(3);
    expect(names.length - readable.length).toBeGreaterThan(2);
  });

  test('the sheets of the demo fit', () => {
    const sheets = demoScenario().combinations.map(({ sheetText }) => readCombinationText(sheetText));
    expect(sheets.length).toBeGreaterThan(3);
    for (const sheet of sheets) {
      if (!sheet.ok) throw new Error(sheet.remarks[0]?.message);
      expect(faultsOf(JSON.parse(combinationToJson(sheet.value)))).toEqual([]);
    }
  });
});

describe('what is read fits', () => {
  const quantities = FIELDS.filter(({ kinds }) => !['text', 'count', 'table'].includes(kinds[0]));

  test.each(quantities.map((field) => [`${field.section}.${field.field}`, field] as const))(
    '%s: every spelling of its units, in any case and spacing',
    (_, { section, field, kinds, example }) => {
      const number = /^[\d.]+/.exec(example)![0];
      const spellings = kinds.flatMap((kind) =>
        kind === 'text' || kind === 'count' || kind === 'table'
          ? []
          : unitsOfKind(kind).flatMap((unit) => unit.spellings),
      );
      let read = 0;
      for (const spelling of spellings) {
        for (const text of [
          `${number} ${spelling}`,
          `${number}${spelling.toUpperCase()}`,
          ` ${number}   ${spelling.toLowerCase()} `,
          `${number.replace('.', ',')} ${spelling.replaceAll(' ', '')}`,
          `−${number} (${spelling})`,
        ]) {
          const plain = minimal(section, { [field]: text });
          const result = readSheet(plain);
          const isImpossible = result.remarks.some(({ code }) => code === 'value-impossible');
          if (!result.ok && !isImpossible) continue;
          read += 1;
          expect(faultsOf(plain), text).toEqual([]);
        }
      }
      expect(read).toBeGreaterThan(0);
    },
  );

  test.each(['unknown', 'Unknown', '?', '', ' not known ', null])('unknown written as %j', (text) => {
    expect(faultsOf(minimal('shortBlock', { bore: text, cylinders: text }))).toEqual([]);
    expect(faultsOf(minimal('heads', { flowIntake: text === null ? null : 'unknown' }))).toEqual([]);
  });
});

describe('what does not fit is not read either', () => {
  const points = 'lift mm, flow L/s\n2, 28\n4, 56';
  test.each<[string, unknown]>([
    ['a unit of another kind', minimal('shortBlock', { bore: '96 kPa' })],
    ['a length without a unit', minimal('shortBlock', { bore: 96 })],
    ['half a cylinder', minimal('shortBlock', { cylinders: 5.5 })],
    ['an origin nobody knows', minimal('shortBlock', { bore: { value: '96 mm', origin: 'guessed' } })],
    ['a list', minimal('shortBlock', { bore: ['96 mm'] })],
    ['a section nobody knows', minimal('bottomEnd', { bore: '96 mm' })],
    ['a section that is a text', { schemaVersion: 1, name: 'six', cam: 'road' }],
    ['no name', { schemaVersion: 1 }],
    ['a newer version', { schemaVersion: 2, name: 'six' }],
    ['a flow sheet without test pressure', minimal('heads', { flowIntake: { points } })],
    ['a flow sheet without points', minimal('heads', { flowIntake: { testPressure: '28 inH2O' } })],
    ['a flow sheet that is a figure', minimal('heads', { flowIntake: '280 cfm' })],
    ['a tune on a sheet', minimal('tune', { sparkAdvance: '28 deg' })],
  ])('%s', (_, plain) => {
    expect(faultsOf(plain)).not.toEqual([]);
    expect(readSheet(plain).ok).toBe(false);
  });
});
