import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { WrittenMap } from '../index.ts';
import { mapToCsv, readMapText } from '../index.ts';

const folder = new URL('../../../../samples/maps/', import.meta.url);
const sample = (name: string) => readMapText(readFileSync(new URL(name, folder), 'utf8'), name);

function sound(name: string): WrittenMap {
  const read = sample(name);
  if (!read.ok) throw new Error(read.remarks.map(({ message }) => message).join('\n'));
  return read.value;
}

const REFERENCE = '# reference pressure: 100 kPa\n# reference temperature: 25 °C\n';
const HEADING = 'flow [kg/s],pressure ratio,speed [rpm],efficiency\n';

function refusal(text: string) {
  const read = readMapText(text, 'blower.csv');
  expect(read.ok).toBe(false);
  const [first] = read.remarks;
  expect(first!.level).toBe('refusal');
  return first!;
}

test('a map in SI units is read whole', () => {
  const map = sound('shop-blower.csv');
  expect(map).toMatchObject({
    name: 'Shop blower no. 2',
    form: 'points',
    reference: { pressure: 100_000, temperature: 298.15 },
    geometry: { wheelExitDiameter: 0.105, wheelInletDiameter: 0.07, blades: 16 },
    leftEnd: 'surge',
    origin: 'assumed',
    invented: true,
  });
  expect(map.geometry.backsweep).toBeCloseTo(Math.PI / 6, 12);
  expect(map.points.length).toBe(35);
  expect(map.notes).toBe('made up for a sample; no blower is like it');
});

describe('the same blower in other units is the same blower', () => {
  const plain = sound('shop-blower.csv').points;
  test.each([
    // Each file rounds what it writes: flow and speed to better than one part in a thousand.
    ['us-units.csv', true],
    ['tip-speed.csv', true],
    ['volume-flow.csv', false],
  ])('%s', (name, hasEfficiency) => {
    const { points } = sound(name);
    expect(points.length).toBe(plain.length);
    for (const [at, point] of points.entries()) {
      const wanted = plain[at]!;
      expect(Math.abs(point.flow / wanted.flow - 1)).toBeLessThan(1e-3);
      expect(Math.abs(point.speedRpm / wanted.speedRpm - 1)).toBeLessThan(1e-3);
      expect(point.pressureRatio).toBe(wanted.pressureRatio);
      if (hasEfficiency) expect(point.efficiency!).toBeCloseTo(wanted.efficiency!, 3);
      else expect(point.efficiency).toBeNull();
    }
  });

  test('a volume flow says at which state it was taken, a file without a name gives its own', () => {
    const read = sample('volume-flow.csv');
    expect(read.remarks.map(({ code }) => code)).toEqual(['map-volume-flow']);
    expect(sound('volume-flow.csv').name).toBe('volume-flow');
  });
});

test('units of the trade by their definitions: 1 lb/min is 0.45359237/60 kg/s, 1 ft³ is 0.3048³ m³', () => {
  const read = readMapText(`${REFERENCE}flow (lb/min),pressure ratio,speed (krpm)\n60,1.5,40\n`, 'a.csv');
  expect(read.ok && read.value.points[0]).toMatchObject({
    flow: expect.closeTo(0.45359237, 12),
    speedRpm: 40_000,
  });
  const volume = readMapText(`${REFERENCE}flow (cfm),pressure ratio,speed (rpm)\n600,1.5,40000\n`, 'a.csv');
  // 600 ft³/min × 0.3048³ / 60 × 100,000 Pa / (287.04 J/(kg·K) × 298.15 K) by hand: 0.33088 kg/s.
  expect(volume.ok && volume.value.points[0]!.flow).toBeCloseTo(0.33088, 4);
});

test('a heading that is only a unit, or an abbreviation, is understood where it can mean one column', () => {
  const read = readMapText(`${REFERENCE}g/s\tPR\trpm\teff [%]\n200\t1.4\t40000\t72\n`, 'a.csv');
  expect(read.ok && read.value.points).toEqual([
    { flow: 0.2, pressureRatio: 1.4, speedRpm: 40_000, efficiency: expect.closeTo(0.72, 12) },
  ]);
  expect(refusal(`${REFERENCE}kg/s,%,rpm\n0.2,1.4,40000\n`).code).toBe('table-column-missing');
});

test('a rated map has one point', () => {
  expect(sound('rated-point.csv')).toMatchObject({
    form: 'rated',
    points: [{ flow: 0.24, pressureRatio: 1.5, speedRpm: 48_000, efficiency: 0.74 }],
  });
  expect(refusal(`# form: rated\n${REFERENCE}${HEADING}0.2,1.4,40000,0.7\n0.3,1.3,40000,0.7\n`).code).toBe(
    'map-rated-points',
  );
});

test('a map without its reference is refused with what to write; assumed, it is read and says so', () => {
  const { message } = refusal(`${HEADING}0.2,1.4,40000,0.7\n`);
  expect(message).toContain('"# reference pressure: 100 kPa" and "# reference temperature: 25 °C"');
  const read = readMapText(`${HEADING}0.2,1.4,40000,0.7\n`, 'a.csv', {
    assume: { pressure: 98_100, temperature: 293.15 },
  });
  expect(read.ok && read.value.reference).toEqual({ pressure: 98_100, temperature: 293.15 });
  expect(read.remarks).toMatchObject([{ level: 'caution', code: 'map-reference-assumed' }]);
});

test('efficiencies without a unit above 1 are per cent, and the file says so', () => {
  const read = readMapText(`${REFERENCE}${HEADING}0.2,1.4,40000,70\n0.3,1.3,40000,72\n`, 'a.csv');
  expect(read.ok && read.value.points.map(({ efficiency }) => efficiency)).toEqual([0.7, 0.72]);
  expect(read.remarks).toMatchObject([{ code: 'map-efficiency-per-cent' }]);
});

// file | code | line of the fault
test.each([
  ['invalid-no-reference.csv', 'map-reference-missing', undefined],
  ['invalid-mixed-efficiency.csv', 'map-efficiency-mixed', 7],
  ['invalid-unit.csv', 'table-unit', 3],
  ['invalid-design-speed.csv', 'map-speed-needs', undefined],
  ['invalid-cell.csv', 'table-cell', 9],
])('%s is refused, naming the place', (name, code, line) => {
  const read = sample(name);
  expect(read.ok).toBe(false);
  expect(read.remarks[0]).toMatchObject({ level: 'refusal', code });
  expect(read.remarks[0]!.line).toBe(line);
  expect(read.remarks[0]!.message).toContain(name);
});

// what stands below the reference | code
test.each([
  ['', 'table-empty'],
  [HEADING, 'table-empty'],
  [`${HEADING}0.2,1.4,40000\n0.3\n`, 'table-row-length'],
  [`${HEADING}0.2,1.4,,0.7\n`, 'table-cell-empty'],
  [`${HEADING}200,1.4,40000,0.7\n`, 'table-cell-impossible'],
  [`${HEADING}0.2,1.4,40000,0.97\n`, 'map-efficiency-impossible'],
  ['flow [kg/s],mass flow [kg/s],pressure ratio,speed [rpm]\n0.2,0.2,1.4,40000\n', 'table-column-twice'],
  ['flow [kPa],pressure ratio,speed [rpm]\n0.2,1.4,40000\n', 'table-unit'],
  ['flow,pressure ratio,speed [rpm]\n0.2,1.4,40000\n', 'table-unit'],
  ['flow [kg/s],speed [rpm],x\n0.2,40000,1\n', 'table-column-missing'],
  [`# blades: many\n${HEADING}0.2,1.4,40000,0.7\n`, 'map-line'],
  [`# reference pressure: 99 kPa\n${HEADING}0.2,1.4,40000,0.7\n`, 'given-twice'],
  [`# wheel exit diameter: 105 m\n${HEADING}0.2,1.4,40000,0.7\n`, 'map-line'],
])('a map of %j is refused as %s', (text, code) => {
  expect(refusal(REFERENCE + text).code).toBe(code);
});

test('what a map says besides is left out with a note', () => {
  const read = readMapText(
    `${REFERENCE}# bearing: oiled\n${HEADING.trim()},noise\n0.2,1.4,40000,0.7,80\n`,
    'a.csv',
  );
  expect(read.ok).toBe(true);
  expect(read.remarks.map(({ code }) => code)).toEqual(['map-line-not-known', 'table-column-not-used']);
});

test('a spreadsheet that put the lines above the points into quotes and empty cells changes nothing', () => {
  const plain = sound('shop-blower.csv');
  const text = mapToCsv({ ...plain, notes: 'oil, then belt\n  second "line"' });
  const opened = text
    .split('\n')
    .map((line) =>
      line.startsWith('#') ? `${/[",]/.test(line) ? `"${line.replaceAll('"', '""')}"` : line},,,` : line,
    )
    .join('\r\n');
  const read = readMapText(opened, 'a.csv');
  expect(read.ok && read.value).toEqual({ ...plain, notes: 'oil, then belt\n  second "line"' });
});

const number = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map((value) => value + 0);
const orNull = (value: fc.Arbitrary<number>) => fc.option(value, { nil: null });
const line = fc.string({ unit: 'grapheme', maxLength: 20 }).map((text) => text.replace(/[\r\n]/g, ''));
const anyMap: fc.Arbitrary<WrittenMap> = fc.record({
  name: fc.constantFrom('Shop blower no. 2', 'blower: second, "blue"', 'ñ 漢字'),
  form: fc.constant('points' as const),
  reference: fc.record({ pressure: number(50_000, 120_000), temperature: number(250, 330) }),
  geometry: fc.record({
    wheelExitDiameter: orNull(number(0.02, 1)),
    wheelInletDiameter: orNull(number(0.01, 0.9)),
    blades: orNull(fc.integer({ min: 3, max: 60 })),
    backsweep: orNull(number(0, 1)),
  }),
  points: fc.array(
    fc.record({
      flow: number(1e-6, 40),
      pressureRatio: number(0.6, 9),
      speedRpm: number(2, 400_000),
      efficiency: orNull(number(0.06, 0.94)),
    }),
    { minLength: 1, maxLength: 12 },
  ),
  leftEnd: fc.constantFrom('surge' as const, 'not known' as const),
  origin: fc.constantFrom('measured' as const, 'data sheet' as const, 'not stated' as const),
  notes: fc.array(line, { maxLength: 3 }).map((lines) => lines.join('\n')),
  invented: fc.boolean(),
});

test('any map: written and read back it is the same, bit for bit', () => {
  fc.assert(
    fc.property(anyMap, (map) => {
      const read = readMapText(mapToCsv(map), 'map.csv');
      expect(read.ok && read.value).toEqual(map);
    }),
    { seed: 7, numRuns: 300 },
  );
});

test('any text, and any spoiled map: read or refused with a reason, never thrown, never NaN', () => {
  const good = mapToCsv(sound('shop-blower.csv'));
  const spoiled = fc
    .array(
      fc.tuple(
        fc.nat(good.length),
        fc.nat(30),
        fc.constantFrom('', ',', ';', '"', '#', '\n', '%', '-', '1e999', 'NaN', '[', '\t', '9'),
      ),
      {
        minLength: 1,
        maxLength: 4,
      },
    )
    .map((cuts) =>
      cuts.reduce((text, [at, count, put]) => text.slice(0, at) + put + text.slice(at + count), good),
    );
  fc.assert(
    fc.property(fc.oneof(spoiled, fc.string({ unit: 'grapheme', maxLength: 200 })), (text) => {
      const read = readMapText(text, 'map.csv');
      if (read.ok) {
        for (const { flow, pressureRatio, speedRpm, efficiency } of read.value.points)
          expect([flow, pressureRatio, speedRpm, efficiency ?? 0.5].every(Number.isFinite)).toBe(true);
      } else expect(read.remarks.some(({ level }) => level === 'refusal')).toBe(true);
      for (const { message } of read.remarks) expect(message).not.toMatch(/undefined|Infinity|\bnull\b/);
    }),
    { seed: 11, numRuns: 1500 },
  );
});
