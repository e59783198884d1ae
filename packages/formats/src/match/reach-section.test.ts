import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readMatchText } from './read-match.ts';

const folder = new URL('../../../../samples/', import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, folder), 'utf8');

describe('what is asked of a match', () => {
  test('stands beside it in inside units', () => {
    const read = readMatchText(textOf('reach/straight-six.yaml'));
    if (!read.ok) throw new Error(read.remarks[0]!.message);
    const { reach } = read.value;
    // 1 hp is 745.699 871 58 W, 1 psi 6,894.757 Pa (NIST SP 811)
    expect(reach!.power).toBeCloseTo(320 * 745.699_871_58, 3);
    expect(reach!.boostCap).toBeCloseTo(8 * 6894.757_293, 2);
    expect(reach!.parts).toEqual({ from: 'file', path: 'parts.yaml' });
    const [other] = reach!.superchargers;
    expect(other!.sections.drive!.blowerPulleyDiameter!.value).toBeCloseTo(0.09, 12);
    expect(other!.map).toMatchObject({ from: 'written', map: { form: 'rated' } });
  });

  test('a file without it asks for nothing', () => {
    const read = readMatchText(textOf('match/fitted.yaml'));
    expect(read.ok && [read.value.reach, read.value.overSpeed]).toEqual([null, null]);
  });

  test.each([
    ['reach/invalid-unit.yaml', 'unit-missing', /reach\.power: 320 has no unit/],
    ['reach/invalid-speed-and-window.yaml', 'match-one-of', /at.*window/],
  ])('%s is refused with its line', (name, code, message) => {
    const read = readMatchText(textOf(name));
    expect(read).toMatchObject({ ok: false, remarks: [{ code }] });
    expect(read.remarks[0]!.message).toMatch(message);
    expect(read.remarks[0]!.line).toBeGreaterThan(40);
  });

  test.each([
    ['power: 320 hp\n  boostcap: 8 psi\n  powr: 3 hp', 'match-key-not-known'],
    ['power: 320 hp\n  without: [wishes]', 'match-word'],
    ['power: 320 hp\n  superchargers: [{ name: another }]', 'match-missing'],
    [
      'power: 320 hp\n  superchargers: [{ name: another, supercharger: { stepUp: 3.3 }, cam: { lift: 1 } }]',
      'match-key-not-known',
    ],
    ['power: 320 hp\n  parts: { injectors: [{ flow: 65 lb/h }] }', 'match-missing'],
    ['power: 320 hp\n  window: { from: 6000 rpm, to: 3000 rpm }', 'match-one-of'],
  ])('reach: %s is refused', (lines, code) => {
    const read = readMatchText(`${textOf('match/rated-point.yaml')}reach:\n  ${lines}\n`);
    expect(read).toMatchObject({ ok: false, remarks: [{ code, level: 'refusal' }] });
  });

  test('factors over engine speed are a table of their own', () => {
    const table = 'overSpeed: |\n  engine speed [rpm], air, fuel\n  3000, 1, 1.02\n  6000, 1.08, 1.04\n';
    const read = readMatchText(`${textOf('match/rated-point.yaml')}${table}`);
    expect(read.ok && read.value.overSpeed).toEqual({
      engineSpeedRpm: [3000, 6000],
      head: null,
      air: [1, 1.08],
      work: null,
      fuel: [1.02, 1.04],
    });
  });
});
