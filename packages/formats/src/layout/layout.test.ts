import { describe, expect, test } from 'vitest';
import type { ColumnMapping, FileReading } from '../model.ts';
import { guessedMapping } from '../pulls/guessed-mapping.ts';
import { readTextFile } from '../read-text-file.ts';
import { bytesOfText, readingOf } from '../test-bytes.ts';
import { confirmedLayout } from './confirmed-layout.ts';
import { layoutConflicts } from './layout-conflicts.ts';
import { layoutFingerprint } from './layout-fingerprint.ts';
import { rememberedMapping } from './remembered-mapping.ts';

const SPEEDS = [2000, 2500, 3000, 3500, 4000, 4500];
/** N·m */
const torqueAt = (rpm: number): number => 300 + rpm / 100;
const wattOf = (torque: number, rpm: number): number => (torque * rpm * 2 * Math.PI) / 60;
const table = (header: string, row: (rpm: number) => number[], mark = ','): string =>
  `${header}\n${SPEEDS.map((rpm) =>
    row(rpm)
      .map((value) => value.toFixed(2))
      .join(mark),
  ).join('\n')}\n`;
const metric = (scale = 1): string =>
  table('Engine speed [rpm],Torque [N·m],Power [kW]', (rpm) => [
    rpm,
    scale * torqueAt(rpm),
    (scale * wattOf(torqueAt(rpm), rpm)) / 1000,
  ]);

const confirmed = (reading: FileReading, mapping: ColumnMapping[] = guessedMapping(reading)) =>
  confirmedLayout(reading, mapping, null);

describe('a kind of file is known again', () => {
  const print = (text: string) => layoutFingerprint(readingOf(text));

  test('whatever its rows, decimal mark, delimiter, encoding and the lines before its header', () => {
    const rows = metric(1.1);
    const semicolons = metric().replaceAll(',', ';').replaceAll('.', ',');
    const utf16 = new Uint8Array(
      new Uint16Array([...`\uFEFF${metric()}`].map((one) => one.charCodeAt(0))).buffer,
    );
    const wide = readTextFile(utf16, 'wide.csv');
    const first = print(metric());
    expect(first).toMatch(/^[0-9a-f]{16}$/);
    expect(print(rows)).toBe(first);
    expect(print(semicolons)).toBe(first);
    expect(print(`Cell 2\nInvented\n\n${metric()}`)).toBe(first);
    expect(print(metric().replace('Engine speed', 'ENGINE  SPEED'))).toBe(first);
    expect(wide.ok && layoutFingerprint(wide.value)).toBe(first);
  });

  test('but not with another unit, another name, a column more, or another order', () => {
    const first = print(metric());
    for (const header of [
      'Engine speed [rpm],Torque [lb-ft],Power [kW]',
      'Engine speed [rpm],Brake torque [N·m],Power [kW]',
      'Torque [N·m],Engine speed [rpm],Power [kW]',
    ]) {
      expect(print(metric().replace(/^.*\n/, `${header}\n`)), header).not.toBe(first);
    }
  });

  test('never without a header: widths and ranges are too weak', () => {
    expect(print(metric().replace(/^.*\n/, ''))).toBeNull();
  });

  test('a clock is not a time in seconds', () => {
    const clock = 'Time,rpm,Nm\n10:00:01,2000,300\n10:00:02,2100,301\n10:00:03,2200,302\n';
    const seconds = 'Time,rpm,Nm\n1,2000,300\n2,2100,301\n3,2200,302\n';
    expect(print(clock)).not.toBe(print(seconds));
  });
});

describe('what was confirmed is put on the next file', () => {
  const text = 'n,Load,Gauge,Gauge\n2000,300,1,5\n2500,310,2,6\n3000,320,3,7\n';
  const mapping: ColumnMapping[] = [
    { index: 0, meaning: 'engineSpeed', unit: 'rpm' },
    { index: 1, meaning: 'torque', unit: 'kgf·m' },
    { index: 2, meaning: 'boost', unit: 'psi' },
    { index: 3, meaning: 'oilPressure', unit: 'bar' },
  ];

  test('in the same order, also with two columns of one name', () => {
    const layout = confirmed(readingOf(text), mapping);
    expect(rememberedMapping(readingOf(text.replace('310', '333')), layout)).toEqual(mapping);
  });

  test('by name where the columns stand in another order', () => {
    const named = text.replace('Gauge,Gauge', 'Gauge A,Gauge B');
    const layout = confirmed(readingOf(named), mapping);
    const turned = 'Gauge B,n,Gauge A,Load\n5,2000,1,300\n6,2500,2,310\n7,3000,3,320\n';
    expect(rememberedMapping(readingOf(turned), layout)).toEqual([
      { index: 0, meaning: 'oilPressure', unit: 'bar' },
      { index: 1, meaning: 'engineSpeed', unit: 'rpm' },
      { index: 2, meaning: 'boost', unit: 'psi' },
      { index: 3, meaning: 'torque', unit: 'kgf·m' },
    ]);
  });

  test('not where two of one name stand in another order: nobody can tell them apart', () => {
    const layout = confirmed(readingOf(text), mapping);
    const turned = 'Gauge,n,Load,Gauge\n1,2000,300,5\n2,2500,310,6\n3,3000,320,7\n';
    expect(rememberedMapping(readingOf(turned), layout)).toBeNull();
  });

  test('a column without a number in this file is left out', () => {
    const layout = confirmed(readingOf(metric()));
    const empty = metric().replace(/,[\d.]+$/gm, ',');
    expect(rememberedMapping(readingOf(empty), layout)?.[2]?.meaning).toBeNull();
  });
});

describe('what was confirmed is doubted', () => {
  const bare = (torqueUnit: number, powerUnit: number): string =>
    table('rpm,torque,power', (rpm) => [
      rpm,
      torqueAt(rpm) / torqueUnit,
      wattOf(torqueAt(rpm), rpm) / powerUnit,
    ]);
  // 1 lbf·ft = 1.355 818 N·m, 1 hp = 745.70 W, 1 metric hp = 735.499 W: NIST SP 811 (digits from memory).
  const US = bare(1.355818, 745.6999);
  const conflictsOf = (first: string, next: string, mapping?: ColumnMapping[]) => {
    const layout = confirmed(readingOf(first), mapping);
    const reading = readingOf(next);
    return layoutConflicts(reading, rememberedMapping(reading, layout)!, layout);
  };

  test('not while power is torque × speed', () => {
    expect(conflictsOf(US, US.replaceAll('2000.00', '2010.00'))).toEqual([]);
  });

  test('where the same header holds other units: power is not torque × speed any more', () => {
    // lb-ft and hp read as such; the next file holds N·m and kW: 745.70 / (1.355818 · 1000) = 0.55.
    const [why] = conflictsOf(US, bare(1, 1000));
    expect(why).toMatch(/power is 0\.550 times torque × engine speed in this file; it was 1\.000 times then/);
  });

  test('metric horsepower in the place of horsepower is 1.4 % off: within the 2 % by the figures, seen by the guess', () => {
    expect(conflictsOf(US, bare(1.355818, 735.49875))[0]).toMatch(
      /power in hp was confirmed.*look like power in PS/,
    );
  });

  test('a ratio that was confirmed once is not asked about again', () => {
    const corrected = metric().replace(/[\d.]+$/gm, (power) => (1.05 * Number(power)).toFixed(2));
    expect(conflictsOf(corrected, corrected.replaceAll('2000.00', '2005.00'))).toEqual([]);
  });

  test('where readings cannot be what they were', () => {
    const oil = (reading: number) =>
      table('rpm,torque [N·m],p oil [bar]', (rpm) => [rpm, torqueAt(rpm), reading]);
    expect(conflictsOf(oil(5), oil(5))).toEqual([]);
    expect(conflictsOf(oil(5), oil(500))[0]).toMatch(
      /“p oil” was oil pressure in bar.*6 of its 6 readings.*cannot be/,
    );
  });

  test('where a column without a unit looks like another unit, until that was confirmed too', () => {
    const boost = (high: number) =>
      table('rpm,torque [N·m],boost', (rpm) => [rpm, torqueAt(rpm), (high * rpm) / 4500]);
    expect(conflictsOf(boost(0.6), boost(0.8))).toEqual([]);
    expect(conflictsOf(boost(0.6), boost(60)).join(' ')).toMatch(
      /boost in bar was confirmed.*look like boost in kPa/,
    );

    const first = readingOf(boost(0.6));
    const psi = guessedMapping(first).with(2, { index: 2, meaning: 'boost', unit: 'psi' });
    // 60 psi is 414 kPa, which an engine can have: only the guess tells.
    const once = confirmedLayout(first, psi, null);
    const next = readingOf(boost(60));
    const twice = confirmedLayout(next, psi, once);
    expect(layoutConflicts(next, psi, once)).toHaveLength(1);
    expect(layoutConflicts(next, psi, twice)).toEqual([]);
    expect(layoutConflicts(first, psi, twice)).toEqual([]);
  });
});

test('a header that only bytes tell apart is the same kind', () => {
  const marked = readTextFile(bytesOfText(`\uFEFF${metric()}`), 'marked.csv');
  expect(marked.ok && layoutFingerprint(marked.value)).toBe(layoutFingerprint(readingOf(metric())));
});
