import { describe, expect, test } from 'vitest';
import { sheetToPlain } from './sheet-to-plain.ts';
import { testSheet } from './test-sheet.ts';
import { withLines } from './with-lines.ts';

const BASE = sheetToPlain(
  testSheet({
    cam: {
      profile: 'base cam',
      durationIntake: { value: '242 deg', origin: 'data sheet' },
      advance: '4 deg',
    },
    heads: { flowIntake: { testPressure: '28 inH2O', points: 'lift mm, flow L/s\n2, 28\n4, 56' } },
  }),
);
const changed = (place: string, entered: string | null) => withLines(BASE, [{ place, entered }]);

describe('the same but for some lines', () => {
  test('a value with its origin in brackets; other brackets belong to the text', () => {
    const result = withLines(BASE, [
      { place: 'cam.durationIntake', entered: '254 deg (Data sheet)' },
      { place: 'Cam.Profile', entered: 'longer cam (second grind)' },
      { place: 'supercharger.type', entered: 'centrifugal' },
    ]);
    expect(result.ok && result.value).toEqual({
      ...BASE,
      cam: {
        profile: 'longer cam (second grind)',
        durationIntake: { value: '254 deg', origin: 'data sheet' },
        advance: '4 deg',
      },
      supercharger: { type: 'centrifugal' },
    });
  });

  test('the old origin does not pass to a new value', () => {
    const result = changed('cam.durationIntake', '254 deg');
    expect(result.ok && result.value.cam).toMatchObject({ durationIntake: '254 deg' });
  });

  test('a line inside a table, and a table begun where there was "unknown"', () => {
    const result = changed('heads.flowIntake.testPressure', '10 inH2O');
    expect(result.ok && result.value.heads).toMatchObject({
      flowIntake: { testPressure: '10 inH2O', points: 'lift mm, flow L/s\n2, 28\n4, 56' },
    });
    const begun = withLines({ ...BASE, heads: { flowIntake: { value: 'unknown', origin: 'assumed' } } }, [
      { place: 'heads.flowIntake.points', entered: 'x' },
    ]);
    expect(begun.ok && begun.value.heads).toEqual({ flowIntake: { points: 'x' } });
  });

  test('a line is taken off, the first sheet is left as it was', () => {
    const result = changed('cam.advance', null);
    expect(result.ok && Object.keys(result.value.cam as object)).toEqual(['profile', 'durationIntake']);
    expect(Object.keys(BASE.cam as object)).toContain('advance');
  });

  test.each([
    ['profile', 'longer', /^profile: not a line of a sheet.*cam\.profile/],
    ['camshaft.profile', 'longer', /not a line of a sheet.*shortBlock, heads, cam/],
    ['cam.lobeSeparation', null, /cannot be taken off.*profile, durationIntake, advance/],
    ['drive.type', null, /cannot be taken off.*no lines there/],
  ])('%s = %s is refused with what to do', (place, entered, message) => {
    const result = changed(place, entered);
    expect(result.ok).toBe(false);
    expect(result.remarks[0]!.message).toMatch(message);
  });
});
