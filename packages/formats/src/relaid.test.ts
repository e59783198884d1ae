import type { ChannelMeaning } from '@pullbook/core/pull';
import { fromInside, type QuantityKind, toInside } from '@pullbook/core/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { guessedMapping, pullsFromReading, readTextFile } from './index.ts';

/** How one channel may be written: names it goes by, units with their decimals, all in the trade's use. */
interface Written {
  names: readonly string[];
  units: readonly (readonly [written: string, unit: string, decimals: number])[];
}

const CHANNELS: Partial<Record<ChannelMeaning, Written>> = {
  engineSpeed: {
    names: ['Engine speed', 'Drehzahl', 'n Motor'],
    units: [
      ['rpm', 'rpm', 0],
      ['1/min', 'rpm', 1],
    ],
  },
  torque: {
    names: ['Torque', 'Drehmoment', 'Brake torque'],
    units: [
      ['Nm', 'N·m', 1],
      ['lb-ft', 'lb-ft', 1],
      ['N·m', 'N·m', 2],
    ],
  },
  power: {
    names: ['Power', 'Leistung', 'Brake power'],
    units: [
      ['kW', 'kW', 2],
      ['hp', 'hp', 1],
      ['PS', 'PS', 2],
    ],
  },
  boost: {
    names: ['Boost', 'Ladedruck'],
    units: [
      ['kPa', 'kPa', 1],
      ['psi', 'psi', 2],
      ['bar', 'bar', 3],
    ],
  },
  oilTemperature: {
    names: ['Oil temp', 'Öltemperatur'],
    units: [
      ['°C', '°C', 1],
      ['°F', '°F', 0],
    ],
  },
  lambda: { names: ['Lambda', 'λ left'], units: [['', '', 3]] },
  fuelFlow: {
    names: ['Fuel flow', 'Kraftstoffverbrauch'],
    units: [
      ['kg/h', 'kg/h', 2],
      ['lb/h', 'lb/h', 1],
    ],
  },
}; // prettier-ignore
const MEANINGS = Object.keys(CHANNELS) as ChannelMeaning[];

/** Inside units, one value a row. */
type InventedPull = Record<string, number[]>;

const invented = fc
  .record({
    rows: fc.integer({ min: 8, max: 60 }),
    from: fc.integer({ min: 1500, max: 3500 }),
    step: fc.integer({ min: 20, max: 120 }),
    height: fc.double({ min: 150, max: 800, noNaN: true }),
    boost: fc.double({ min: 20e3, max: 180e3, noNaN: true }),
    seed: fc.integer({ min: 1, max: 1e6 }),
  })
  .map(({ rows, from, step, height, boost, seed }): InventedPull => {
    const speed = Array.from({ length: rows }, (_, row) => from + step * row);
    const wobble = (row: number) => 1 + 0.01 * Math.sin(seed + 1.7 * row);
    const torque = speed.map((rpm, row) => height * (1 - ((rpm - 5000) / 9000) ** 2) * wobble(row));
    return {
      engineSpeed: speed,
      torque,
      power: torque.map((value, row) => (value * speed[row]! * Math.PI) / 30),
      boost: speed.map((rpm) => boost * (rpm / 9000) ** 2),
      oilTemperature: speed.map((_, row) => 358 + 0.1 * row),
      lambda: speed.map((_, row) => 0.84 * wobble(row)),
      fuelFlow: torque.map((value, row) => (value * speed[row]! * 0.1047) / 1e7 + 0.001),
    };
  }); // prettier-ignore

const laid = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  decimalComma: fc.boolean(),
  encoding: fc.constantFrom('utf-8', 'utf-8 with mark', 'utf-16le', 'utf-16be', 'latin-1'),
  lineEnd: fc.constantFrom('\n', '\r\n'),
  order: fc.shuffledSubarray(MEANINGS, { minLength: MEANINGS.length }),
  names: fc.array(fc.nat(2), { minLength: 8, maxLength: 8 }),
  units: fc.array(fc.nat(2), { minLength: 8, maxLength: 8 }),
  unitsIn: fc.constantFrom('[]', '()', 'a row', 'a row of brackets', 'none for torque and power'),
  time: fc.constantFrom('none', 's', 'ms', 'clock', 'clock of 12 hours', 'without unit'),
  before: fc.constantFrom<string[]>(
    [],
    ['Invented record', 'Cell: 2'],
    ['Invented', '', 'Barometer;98.2 kPa', ''],
  ),
  quoted: fc.constantFrom('no', 'names', 'names over two lines'),
  missingMark: fc.constantFrom('', 'n/a', '-', 'NaN', '?'),
  missingEvery: fc.integer({ min: 4, max: 30 }),
  trailingDelimiter: fc.boolean(),
  falling: fc.boolean(),
}); // prettier-ignore
type Laid = typeof laid extends fc.Arbitrary<infer T> ? T : never;

interface Cells {
  header: string;
  unit: string;
  cells: string[];
  /** As written, inside unit; NaN where a mark for missing stands. `within`: half of the last digit. */
  expected: number[];
  within: number;
  meaning: ChannelMeaning;
}

function columnOf(meaning: ChannelMeaning, at: number, pull: InventedPull, how: Laid): Cells {
  const { names, units } = CHANNELS[meaning]!;
  const [writtenUnit, unit, decimals] = units[how.units[at]! % units.length]!;
  const kind = KIND[meaning];
  const isDecisive = ['engineSpeed', 'torque', 'power'].includes(meaning);
  const isLatin = how.encoding === 'latin-1';
  const usable = names.filter((name) => !isLatin || [...name].every((one) => one < '\u0100'));
  const expected: number[] = [];
  const cells = pull[meaning]!.map((value, row) => {
    const isMissing = !isDecisive && row % how.missingEvery === at % how.missingEvery;
    const written = fromInside(value, unit, kind).toFixed(decimals);
    expected.push(isMissing ? Number.NaN : toInside(Number(written), unit, kind));
    return isMissing ? how.missingMark : how.decimalComma ? written.replace('.', ',') : written;
  });
  const bare = how.unitsIn === 'none for torque and power' && (meaning === 'torque' || meaning === 'power');
  return {
    header: usable[how.names[at]! % usable.length]!,
    unit: bare ? '' : writtenUnit,
    cells,
    expected,
    within: 1e-9 * Math.abs(expected.find(Number.isFinite) ?? 1) + 1e-9,
    meaning,
  };
}

const KIND: Partial<Record<ChannelMeaning, QuantityKind>> = {
  engineSpeed: 'engineSpeed',
  torque: 'torque',
  power: 'power',
  boost: 'gaugePressure',
  oilTemperature: 'temperature',
  lambda: 'ratio',
  fuelFlow: 'massFlow',
};

/** Tenths of a second a row; clocks pass a full hour. */
function timeOf(rows: number, how: Laid): Cells | null {
  if (how.time === 'none') return null;
  const seconds = Array.from({ length: rows }, (_, row) => row / 5);
  const clock = (second: number, twelve: boolean): string => {
    const at = 43_195 + second;
    const hour = Math.floor(at / 3600);
    const shown = twelve ? ((hour + 11) % 12) + 1 : hour;
    const rest = (at % 60).toFixed(1).padStart(4, '0');
    return `${shown}:${String(Math.floor((at % 3600) / 60)).padStart(2, '0')}:${rest}${twelve ? (hour < 12 ? ' AM' : ' PM') : ''}`;
  };
  const number = (text: string) => (how.decimalComma ? text.replace('.', ',') : text);
  const cells = seconds.map((second) => {
    if (how.time === 'ms') return (1000 * second).toFixed(0);
    if (how.time === 'clock') return clock(second, false);
    if (how.time === 'clock of 12 hours') return clock(second, true);
    return number(second.toFixed(1));
  });
  const unit = how.time === 's' || how.time === 'ms' ? how.time : '';
  return { header: 'Time', unit, cells, expected: seconds, within: 1e-6, meaning: 'time' };
}

function laidOut(pull: InventedPull, how: Laid): { bytes: Uint8Array; columns: Cells[] } {
  const rows = pull.engineSpeed!.length;
  const turned = how.falling
    ? Object.fromEntries(Object.entries(pull).map(([name, values]) => [name, [...values].reverse()]))
    : pull;
  const columns = how.order.map((meaning, at) => columnOf(meaning, at, turned, how));
  const time = timeOf(rows, how);
  if (time) columns.unshift(time);
  const unitRow = how.unitsIn.startsWith('a row');
  const line = (cells: string[]) => cells.join(how.delimiter) + (how.trailingDelimiter ? how.delimiter : '');
  const header = columns.map(({ header: name, unit }) => {
    const inside = unitRow || unit === '' ? '' : how.unitsIn === '()' ? ` (${unit})` : ` [${unit}]`;
    const whole = `${name}${inside}`;
    if (how.quoted === 'no') return whole;
    return `"${how.quoted === 'names' ? whole : whole.replace(' ', ` ${how.lineEnd}`)}"`;
  });
  const bracketed = (unit: string) =>
    how.unitsIn === 'a row of brackets' && unit !== '' ? `[${unit}]` : unit;
  const lines = [
    ...how.before,
    line(header),
    ...(unitRow ? [line(columns.map(({ unit }) => bracketed(unit)))] : []),
    ...Array.from({ length: rows }, (_, row) => line(columns.map(({ cells }) => cells[row]!))),
  ];
  return { bytes: encoded(lines.map((one) => one + how.lineEnd).join(''), how.encoding), columns };
}

function encoded(text: string, encoding: Laid['encoding']): Uint8Array {
  if (encoding === 'utf-8') return new TextEncoder().encode(text);
  if (encoding === 'utf-8 with mark') return new TextEncoder().encode(`\uFEFF${text}`);
  if (encoding === 'latin-1') return Uint8Array.from(text, (one) => one.charCodeAt(0));
  const marked = `\uFEFF${text}`;
  const view = new DataView(new ArrayBuffer(2 * marked.length));
  for (let at = 0; at < marked.length; at++)
    view.setUint16(2 * at, marked.charCodeAt(at), encoding === 'utf-16le');
  return new Uint8Array(view.buffer);
}

/** Commas for both jobs at once cannot be told apart: nobody writes so without quotes. */
const canBeTold = ({ delimiter, decimalComma }: Laid): boolean => !(delimiter === ',' && decimalComma);

test('a pull read back from any layout is the same pull', () => {
  fc.assert(
    fc.property(invented, laid.filter(canBeTold), (pull, how) => {
      const { bytes, columns } = laidOut(pull, how);
      const reading = readTextFile(bytes, 'relaid.csv');
      if (!reading.ok) throw new Error(reading.remarks.map(({ message }) => message).join('\n'));
      const pulls = pullsFromReading(reading.value, guessedMapping(reading.value));
      if (!pulls.ok) throw new Error(pulls.remarks.map(({ message }) => message).join('\n'));
      expect(pulls.value).toHaveLength(1);
      const channels = pulls.value[0]!.channels;
      expect(channels.map(({ meaning }) => meaning)).toEqual(columns.map(({ meaning }) => meaning));
      for (const [at, { expected, within, meaning }] of columns.entries()) {
        const values = channels[at]!.values;
        expect(values.length, meaning).toBe(expected.length);
        for (const [row, value] of expected.entries()) {
          if (Number.isNaN(value)) expect(values[row], `${meaning} ${row}`).toBeNaN();
          else expect(Math.abs(values[row]! - value), `${meaning} ${row}`).toBeLessThan(within);
        }
      }
    }),
    { numRuns: 150, seed: 20261125 },
  );
});
