import { FIELDS, readSheet, sheetToPlain } from '@pullbook/core/combination';
import { sheetWords } from '@pullbook/workshop';
import { describe, expect, test } from 'vitest';
import type { SheetWords } from '../../api/edge.ts';
import {
  fieldsLeft,
  linesFromPlain,
  newLine,
  nextField,
  plainFromLines,
  type SheetLine,
  withOriginOfItsValue,
} from './sheet-lines.ts';

const words = sheetWords() as SheetWords;
const plain = {
  schemaVersion: 1,
  name: 'Six',
  cam: { profile: 'road', liftIntake: { value: '11 mm', origin: 'measured' }, 'own line': 'seen' },
  heads: {
    type: 'unknown',
    flowIntake: { origin: 'measured', testPressure: '28 inH2O', points: 'lift mm, flow L/s\n2, 28\n4, 56' },
  },
  drive: {},
};

describe('line by line and back', () => {
  test('the plain form is the same, sections and lines in their order', () => {
    const back = plainFromLines(linesFromPlain(plain, words));
    expect(JSON.stringify(back)).toBe(JSON.stringify(plain));
  });

  test('every field as its example, read by the reader', () => {
    const sheet: Record<string, Record<string, unknown>> = {};
    for (const { section, field, example, table } of FIELDS) {
      const details = Object.fromEntries((table?.details ?? []).map((one) => [one.field, one.example]));
      sheet[section] = {
        ...sheet[section],
        [field]: table === null ? example : { ...details, points: example },
      };
    }
    const read = readSheet({ schemaVersion: 1, name: 'all', ...sheet });
    if (!read.ok) throw new Error(read.remarks[0]!.message);
    const written = sheetToPlain(read.value);
    expect(plainFromLines(linesFromPlain({ ...written }, words))).toEqual(written);
  });

  test('an empty line is kept as unknown, an empty line beside points is left out', () => {
    const lines = linesFromPlain({ schemaVersion: 1, name: 'x', cam: { profile: null } }, words);
    lines.blocks[0]!.lines.push(newLine(words, 'cam', 'liftIntake'), {
      ...newLine(words, 'cam', 'liftCurveIntake'),
      text: 'angle deg, lift mm',
      details: { angleOf: 'crank', notes: ' ' },
    });
    expect(plainFromLines(lines).cam).toEqual({
      profile: 'unknown',
      liftIntake: 'unknown',
      liftCurveIntake: { angleOf: 'crank', points: 'angle deg, lift mm' },
    });
  });
});

describe('what comes next', () => {
  const block = linesFromPlain(plain, words).blocks[0]!;

  test('the next field of the sheet that is not on it; after the last the first that is left', () => {
    expect(nextField(words, block, 'profile')).toBe('follower');
    expect(nextField(words, block, 'liftIntake')).toBe('liftExhaust');
    expect(nextField(words, block, 'notes')).toBe('follower');
    expect(fieldsLeft(words, block).map(({ field }) => field)).not.toContain('profile');
  });

  test('nothing where all is on it', () => {
    const fields = words.sections.find(({ id }) => id === 'cam')!.fields;
    const full = { section: 'cam', lines: fields.map(({ field }) => newLine(words, 'cam', field)) };
    expect(nextField(words, full, 'notes')).toBeNull();
  });
});

test('the origin goes with the old value and comes back with it; one that is chosen stays', () => {
  const first: SheetLine = { field: 'bore', text: '96 mm', origin: 'measured', details: null };
  const edited = withOriginOfItsValue({ ...first, text: '97 mm' }, first, first);
  expect(edited.origin).toBe('not stated');
  const chosen = { ...edited, origin: 'data sheet' };
  expect(withOriginOfItsValue({ ...chosen, text: '97.1 mm' }, chosen, first).origin).toBe('data sheet');
  expect(withOriginOfItsValue({ ...edited, text: '96 mm' }, edited, first).origin).toBe('measured');
  expect(withOriginOfItsValue({ ...first, text: '97 mm' }, first, undefined).origin).toBe('measured');
});
