import type { MapReference, StageGeometry } from '@pullbook/core/airpath';
import { ORIGINS } from '@pullbook/core/combination';
import { type Origin, parseNumber, parseQuantity, type QuantityKind } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, remark, remarkAbout } from '@pullbook/core/remark';

/** What stands above the points of a map; `null`: not said. */
export interface MapHeader {
  name: string | null;
  form: 'points' | 'rated';
  reference: { [Part in keyof MapReference]: number | null };
  geometry: StageGeometry;
  /** r/min */
  designSpeedRpm: number | null;
  leftEnd: 'surge' | 'not known';
  origin: Origin;
  invented: boolean;
  notes: string[];
}

const emptyHeader = (): MapHeader => ({
  name: null,
  form: 'points',
  reference: { pressure: null, temperature: null },
  geometry: { wheelExitDiameter: null, wheelInletDiameter: null, blades: null, backsweep: null },
  designSpeedRpm: null,
  leftEnd: 'not known',
  origin: 'not stated',
  invented: false,
  notes: [],
});

/** A line above the points: `# reference pressure: 100 kPa`, or `reference pressure,100 kPa`. */
export interface HeaderLine {
  key: string;
  value: string;
  line: number;
}

/** Reads one line into the header; gives what is wrong with it. */
type Entry = (header: MapHeader, value: string) => Remark[];

const DEGREE = Math.PI / 180;

const ENTRIES: Record<string, Entry> = {
  name: (header, value) => {
    header.name = value;
    return [];
  },
  form: oneOf(['points', 'rated'], (header, form) => {
    header.form = form;
  }),
  'reference pressure': quantity('absolutePressure', [10_000, 500_000], '100 kPa', (header, value) => {
    header.reference.pressure = value;
  }),
  'reference temperature': quantity('temperature', [200, 400], '25 °C', (header, value) => {
    header.reference.temperature = value;
  }),
  'wheel exit diameter': quantity('length', [0.01, 1.5], '105 mm', (header, value) => {
    header.geometry.wheelExitDiameter = value;
  }),
  'wheel inlet diameter': quantity('length', [0.005, 1], '70 mm', (header, value) => {
    header.geometry.wheelInletDiameter = value;
  }),
  blades: (header, value) => {
    const count = parseNumber(value, '.');
    if (count === null || !Number.isInteger(count) || count < 3 || count > 60)
      return [fault(`"${value}" is not a number of blades. Write a whole number from 3 to 60.`)];
    header.geometry.blades = count;
    return [];
  },
  backsweep: quantity('angle', [-20 * DEGREE, 75 * DEGREE], '35 deg', (header, value) => {
    header.geometry.backsweep = value;
  }),
  'design speed': quantity('engineSpeed', [100, 500_000], '48000 rpm', (header, value) => {
    header.designSpeedRpm = value;
  }),
  'left end': oneOf(['surge', 'not known'], (header, leftEnd) => {
    header.leftEnd = leftEnd;
  }),
  origin: oneOf(ORIGINS, (header, origin) => {
    header.origin = origin;
  }),
  invented: oneOf(['yes', 'no'], (header, answer) => {
    header.invented = answer === 'yes';
  }),
  notes: (header, value) => {
    header.notes.push(value);
    return [];
  },
};

/** Whether a line can stand in the header. */
export const isHeaderKey = (key: string): boolean => Object.hasOwn(ENTRIES, plainKey(key));

/**
 * Reads the lines above the points. A line that is not known is left out with a note; a value that cannot be read is
 * refused with its line. `unknown` says nothing.
 */
export function readMapHeader(lines: readonly HeaderLine[], what: string): Result<MapHeader> {
  const header = emptyHeader();
  const remarks: Remark[] = [];
  const seen = new Set<string>();
  for (const { key: written, value, line } of lines) {
    const key = plainKey(written);
    const place = `${what}, ${key}`;
    const entry = Object.hasOwn(ENTRIES, key) ? ENTRIES[key]! : null;
    if (entry === null) {
      const message = `${what}: "${written}" is not a line of a map and is left out. Its lines are ${Object.keys(ENTRIES).join(', ')}.`;
      remarks.push(remark('note', 'map-line-not-known', message, { line }));
      continue;
    }
    if (seen.has(key) && key !== 'notes') {
      remarks.push(remark('refusal', 'given-twice', `${place}: given twice. Keep one of the two.`, { line }));
      continue;
    }
    seen.add(key);
    if (key !== 'notes' && /^(unknown|)$/i.test(value)) continue;
    remarks.push(...entry(header, value).map((one) => ({ ...remarkAbout(place, one), line })));
  }
  if (remarks.some(({ level }) => level === 'refusal')) return { ok: false, remarks };
  return accepted(header, remarks);
}

const plainKey = (key: string): string =>
  key
    .trim()
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');

function quantity(
  kind: QuantityKind,
  [low, high]: readonly [number, number],
  example: string,
  set: (header: MapHeader, value: number) => void,
): Entry {
  return (header, text) => {
    const read = parseQuantity(text, kind, { decimalMark: 'either' });
    if (!read.ok) return read.remarks;
    if (!(read.value >= low && read.value <= high))
      return [fault(`"${text}" cannot be. Check the number and its unit; write for example "${example}".`)];
    set(header, read.value);
    return [];
  };
}

function oneOf<Word extends string>(
  words: readonly Word[],
  set: (header: MapHeader, word: Word) => void,
): Entry {
  return (header, text) => {
    const word = words.find((one) => one === text.trim().toLowerCase());
    if (word === undefined) return [fault(`"${text}" is not known. Allowed: ${words.join(', ')}.`)];
    set(header, word);
    return [];
  };
}

const fault = (message: string): Remark => remark('refusal', 'map-line', message);
