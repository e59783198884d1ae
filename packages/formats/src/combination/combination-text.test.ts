import { expect, test } from 'vitest';
import { combinationToJson, combinationToYaml, readCombinationText } from './combination-text.ts';

const TEXT = `schemaVersion: 1
name: Straight six
shortBlock:
  bore: { value: 96 mm, origin: measured }
  stroke: 88 mm
  rodLength: unknown
`;

test('YAML and JSON written from a sheet read back to the same sheet', () => {
  const read = readCombinationText(TEXT);
  if (!read.ok) throw new Error(JSON.stringify(read.remarks));
  for (const written of [combinationToYaml(read.value), combinationToJson(read.value)]) {
    const again = readCombinationText(written);
    expect(again.ok && again.value).toEqual(read.value);
  }
});

test.each([
  ['a tab as indent', 'name: x\nshortBlock:\n\tbore: 96 mm\n', 3, 1, /tab/],
  [
    'JSON with a comma too many',
    '{ "name": "x",\n "shortBlock": { "bore": "96 mm",, } }',
    2,
    34,
    /line 2, column 34/,
  ],
  ['a field twice', 'name: x\nshortBlock:\n  bore: 96 mm\n  bore: 97 mm\n', 4, 3, /twice/],
  ['a bracket left open', 'name: [x\n', 2, undefined, /bracket above it is not closed/],
])('%s is refused with its place', (_, text, line, column, message) => {
  const read = readCombinationText(text, 'six.yaml');
  expect(read.ok).toBe(false);
  expect(read.remarks[0]).toMatchObject({
    code: 'sheet-syntax',
    line,
    ...(column === undefined ? {} : { column }),
  });
  expect(read.remarks[0]?.message).toMatch(message);
});

test('what the sheet itself refuses has the line it stands on', () => {
  const read = readCombinationText(TEXT.replace('88 mm', '88 hp'));
  expect(read.ok).toBe(false);
  expect(read.remarks[0]).toMatchObject({ line: 5, column: 3 });
});

test('aliases that would unfold without end are refused', () => {
  const bomb = `a: &a [x,x,x,x,x,x,x,x,x]\n${['b', 'c', 'd', 'e', 'f', 'g'].map((key, at) => `${key}: &${key} [${Array(9).fill(`*${'abcdefg'[at]}`).join(',')}]`).join('\n')}\n`;
  expect(readCombinationText(bomb).ok).toBe(false);
});

test('an empty sheet is refused', () =>
  expect(readCombinationText(' \n').remarks[0]?.code).toBe('empty-sheet'));
