import { type JsonSchema, ORIGINS } from '@pullbook/core/combination';
import { MAP_COLUMNS } from '../map/map-columns.ts';
import { mapPoints } from '../map/map-points.ts';
import type { WrittenPath } from '../yaml/read-written.ts';
import { group } from './group-shape.ts';
import type { MatchFile, WrittenMap } from './model.ts';
import { quantity, ratio } from './quantity-shape.ts';
import { atPlace, pathWords, type Reading, refuse, type Shape, text, whole, word } from './shape.ts';
import { table } from './table-shape.ts';

const DEGREE = Math.PI / 180;

const REFERENCE = group(
  {
    pressure: quantity('absolutePressure', {
      allowed: [10_000, 500_000],
      example: '100 kPa',
      about: 'Reference pressure.',
    }),
    temperature: quantity('temperature', {
      allowed: [200, 400],
      example: '25 °C',
      about: 'Reference temperature.',
    }),
  },
  {
    about:
      'Air to which flow and speed are corrected; without it they mean nothing. Write "reference: { pressure: 100 kPa, temperature: 25 °C }".',
    needed: ['pressure', 'temperature'],
  },
);

const SPEED = { allowed: [100, 500_000], example: '48000 rpm' } as const;

const RATED = group(
  {
    flow: quantity('massFlow', {
      allowed: [1e-3, 50],
      example: '0.5 kg/s',
      about: 'Air flow of the rating, corrected.',
    }),
    pressureRatio: ratio([1.01, 10], '1.9', 'Pressure ratio of the rating.'),
    speed: quantity('engineSpeed', { ...SPEED, about: 'Impeller speed of the rating, corrected.' }),
    efficiency: ratio([0.1, 0.95], '74 %', 'Adiabatic efficiency of the rating.'),
    reference: REFERENCE,
  },
  {
    about: 'One rated point, from which a generic stage is scaled.',
    needed: ['flow', 'pressureRatio', 'speed', 'reference'],
  },
);

const MAP = group(
  {
    name: text('What it is called.'),
    file: text('A CSV beside this file.'),
    rated: RATED,
    points: table(MAP_COLUMNS, 'Points of the map.'),
    reference: REFERENCE,
    wheelExitDiameter: quantity('length', {
      allowed: [0.01, 1.5],
      example: '105 mm',
      about: 'Wheel exit diameter.',
    }),
    wheelInletDiameter: quantity('length', {
      allowed: [0.005, 1],
      example: '70 mm',
      about: 'Wheel inlet diameter.',
    }),
    blades: whole([3, 60], 'Blades at the wheel exit.'),
    backsweep: quantity('angle', {
      allowed: [-20 * DEGREE, 75 * DEGREE],
      example: '35 deg',
      about: 'Backsweep at the wheel exit.',
    }),
    designSpeed: quantity('engineSpeed', { ...SPEED, about: 'To which a speed in per cent is told.' }),
    leftEnd: word(['surge', 'not known'], 'What the point of least flow of each line is.'),
    origin: word(ORIGINS, 'Where the map comes from.'),
  },
  { about: 'A compressor map: a file, points, or one rated point.' },
);

/** A map of the book by its name, or one that is written here or in a file beside. */
export function compressorMap(): Shape<NonNullable<MatchFile['map']>> {
  return {
    get schema(): JsonSchema {
      return {
        anyOf: [{ type: 'string', description: 'A map of the book, by its id or name.' }, MAP.schema],
      };
    },
    read: (value, path, reading) => {
      if (typeof value === 'string' && value.trim() !== '') return { from: 'book', name: value.trim() };
      const said = MAP.read(value, path, reading);
      if (said === undefined) return undefined;
      const keys = Object.keys(value as object).map((key) => key.toLowerCase());
      const ways = ['file', 'rated', 'points'].filter((key) => keys.includes(key));
      if (ways.length !== 1)
        return refuse(
          reading,
          path,
          'match-one-of',
          `gives ${ways.length === 0 ? 'none' : ways.join(' and ')} of file, points and rated. Give one.`,
        );
      if (said.file !== undefined) return { from: 'file', path: said.file };
      const map = said.rated ? ratedMap(said.rated, path, reading) : pointsMap(said, path, reading);
      if (map === undefined) return undefined;
      const {
        name,
        wheelExitDiameter = null,
        wheelInletDiameter = null,
        blades = null,
        backsweep = null,
      } = said;
      return {
        from: 'written',
        map: {
          name: name ?? (said.rated ? 'Rated point of the file' : 'Map of the file'),
          ...map,
          geometry: { wheelExitDiameter, wheelInletDiameter, blades, backsweep },
          leftEnd: said.leftEnd ?? 'not known',
          origin: said.origin ?? 'not stated',
          notes: '',
          invented: false,
        },
      };
    },
  };
}

type Points = Pick<WrittenMap, 'form' | 'reference' | 'points'>;
type SaidRated = Exclude<ReturnType<typeof RATED.read>, undefined>;
type SaidMap = Exclude<ReturnType<typeof MAP.read>, undefined>;

function ratedMap(rated: SaidRated, path: WrittenPath, reading: Reading): Points | undefined {
  const { flow, pressureRatio, speed, efficiency = null } = rated;
  const reference = wholeReference(rated.reference, [...path, 'rated', 'reference'], reading);
  if (flow === undefined || pressureRatio === undefined || speed === undefined || !reference)
    return undefined;
  return { form: 'rated', reference, points: [{ flow, pressureRatio, speedRpm: speed, efficiency }] };
}

function pointsMap(said: SaidMap, path: WrittenPath, reading: Reading): Points | undefined {
  if (said.points === undefined) return undefined;
  const reference = wholeReference(said.reference, [...path, 'reference'], reading);
  if (!reference) return undefined;
  const points = mapPoints(said.points, {
    reference,
    wheelExitDiameter: said.wheelExitDiameter ?? null,
    designSpeedRpm: said.designSpeed ?? null,
    what: pathWords([...path, 'points']),
  });
  reading.remarks.push(...points.remarks.map((one) => atPlace(reading, [...path, 'points'], one)));
  return points.ok ? { form: 'points', reference, points: points.value } : undefined;
}

function wholeReference(
  said: { pressure?: number; temperature?: number } | undefined,
  path: WrittenPath,
  reading: Reading,
): WrittenMap['reference'] | undefined {
  if (said?.pressure !== undefined && said.temperature !== undefined)
    return { pressure: said.pressure, temperature: said.temperature };
  // A part that is missing or wrong was told where it stands.
  const isTold = reading.remarks.some(
    ({ level, message }) => level === 'refusal' && message.startsWith(pathWords(path)),
  );
  return isTold
    ? undefined
    : refuse(reading, path, 'match-missing', `is missing. ${String(REFERENCE.schema.description)}`);
}
