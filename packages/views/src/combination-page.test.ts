import { type Combination, readSheet } from '@pullbook/core/combination';
import { expect, test } from 'vitest';
import { combinationPage } from './combination-page.ts';

function combination(id: string, more: object, packageIds: string[] = []): Combination {
  const sheet = readSheet({
    schemaVersion: 1,
    name: id,
    shortBlock: {
      cylinders: 6,
      bore: { value: '96 mm', origin: 'measured' },
      stroke: '88 mm',
      compressionRatio: 'unknown',
    },
    ...more,
  });
  if (!sheet.ok) throw new Error(sheet.remarks[0]?.message);
  return {
    id,
    engineId: 'engine',
    name: id,
    sheet: sheet.value,
    revision: 1,
    madeFromId: null,
    packageIds,
    createdAt: '',
    invented: true,
  };
}

const engine = { id: 'engine', name: 'Six', buildRevision: 'rebuilt', notes: '', invented: true };
const kit = { id: 'kit', name: 'Supercharger package', covers: ['supercharger'], invented: true };

test('a sheet is shown in its order with what is unknown, derived, changed and fitted', () => {
  const madeFrom = combination('bare', {});
  const blown = combination('blown', { supercharger: { type: 'centrifugal' } }, ['kit']);
  const page = combinationPage(
    { combination: blown, engine, madeFrom, packages: [kit], pulls: [], sheetText: 'name: blown' },
    { units: 'si', decimalMark: '.' },
  );
  expect(page.engineName).toBe('Six, rebuilt');
  expect(page.sections.map((section) => section.title)).toEqual(['Short block', 'Supercharger']);
  const [block] = page.sections;
  expect(block!.rows[1]).toEqual({ label: 'Bore', text: '96 mm', origin: 'measured', unknown: false });
  expect(block!.rows[3]).toMatchObject({ label: 'Compression ratio', text: 'unknown', unknown: true });
  expect(page.changes).toEqual([
    {
      label: expect.stringContaining('Supercharger'),
      before: 'not on the sheet',
      after: 'centrifugal',
      packageName: 'Supercharger package',
    },
  ]);
  expect(page.packages).toEqual(['Supercharger package']);
  expect(page.chips.map((chip) => chip.text)).toEqual(['Never pulled', 'Invented data']);
});

test('displacement of six cylinders of 96 x 88 mm: 6 x pi/4 x 9.6^2 x 8.8 = 3821.8 cm3', () => {
  const page = combinationPage(
    { combination: combination('bare', {}), engine, madeFrom: null, packages: [], pulls: [], sheetText: '' },
    { units: 'si', decimalMark: '.' },
  );
  expect(page.derived[0]!.value).toBe('3,821.8\u00a0cm³');
  const ratio = page.derived.find((figure) => figure.label === 'Compression ratio')!;
  expect(ratio.value).toBe('not known');
  expect(ratio.from).not.toBe('');
});
