import type { AirState } from '@pullbook/core/air';
import type { Fuel } from '@pullbook/core/fuel';
import { remark } from '@pullbook/core/remark';
import type { ColumnShape, HeadedTable } from '../table/headed-table.ts';
import type { WrittenPath } from '../yaml/read-written.ts';
import { air } from './air-shape.ts';
import { fuel } from './fuel-shape.ts';
import { group } from './group-shape.ts';
import type { MatchFile, WrittenBaseline } from './model.ts';
import { atPlace, list, type Reading, refuse, type Shape, text } from './shape.ts';
import { table, wholeColumn } from './table-shape.ts';

export const ENGINE_SPEED: ColumnShape = {
  field: 'engineSpeed',
  words: ['engine speed', 'speed'],
  kinds: ['engineSpeed'],
  example: 'engine speed [rpm]',
  isNeeded: true,
  allowed: [100, 30_000],
};

const BRAKE_POWER: ColumnShape = {
  field: 'brakePower',
  words: ['brake power', 'power'],
  kinds: ['power'],
  example: 'brake power [kW]',
  isNeeded: true,
  allowed: [-1e5, 2e7],
};

const optional = (
  field: string,
  words: readonly string[],
  kind: ColumnShape['kinds'][0],
  example: string,
  allowed: ColumnShape['allowed'],
): ColumnShape => ({ field, words, kinds: [kind], example, isNeeded: false, mayBeEmpty: true, allowed });

const AIR_FLOW = optional('airFlow', ['air flow', 'airflow'], 'massFlow', 'air flow [kg/s]', [0, 50]);

const BASELINE_COLUMNS: readonly ColumnShape[] = [
  ENGINE_SPEED,
  BRAKE_POWER,
  AIR_FLOW,
  optional('frictionPower', ['friction power', 'friction'], 'power', 'friction power [kW]', [0, 5e6]),
  optional(
    'manifoldPressure',
    ['manifold pressure'],
    'absolutePressure',
    'manifold pressure [kPa]',
    [10_000, 150_000],
  ),
  optional(
    'manifoldTemperature',
    ['manifold temperature'],
    'temperature',
    'manifold temperature [°C]',
    [230, 400],
  ),
  optional('lambda', ['lambda'], 'ratio', 'lambda', [0.4, 2]),
];

const BOOSTED_COLUMNS: readonly ColumnShape[] = [
  ENGINE_SPEED,
  BRAKE_POWER,
  optional('boost', ['boost'], 'gaugePressure', 'boost [kPa]', [-1e5, 1e6]),
  optional('chargeTemperature', ['charge temperature'], 'temperature', 'charge temperature [°C]', [230, 600]),
  optional(
    'dischargeTemperature',
    ['discharge temperature'],
    'temperature',
    'discharge temperature [°C]',
    [230, 700],
  ),
  AIR_FLOW,
  optional('impellerSpeed', ['impeller speed'], 'engineSpeed', 'impeller speed [rpm]', [100, 500_000]),
];

const NAMES = list(text('A pull of the book, by its id or name.'), 24);

/** What a table is given with. */
interface Tabled {
  /** Reads its columns by their field; says of a speed that stands there twice. */
  columns: () => (field: string) => number[] | null;
  /** `null`: not given, or refused. */
  air: AirState | null;
  hasWeather: boolean;
  path: WrittenPath;
  reading: Reading;
}

/** Pulls of the book under `pull` or `pulls`, or a table with its weather: exactly one of them. */
function pullsOrTable<T>(
  columns: readonly ColumnShape[],
  about: string,
  made: (tabled: Tabled) => T | undefined,
  more: { fuel?: Shape<Fuel> } = {},
): Shape<({ from: 'pulls'; pulls: string[] } | T) & { fuel?: Fuel }> {
  const written = group(
    {
      pull: text('A pull of the book, by its id or name.'),
      pulls: NAMES,
      table: table(columns, about),
      weather: air('Weather of the table.'),
      ...more,
    },
    { about },
  );
  return {
    get schema() {
      return written.schema;
    },
    read: (value, path, reading) => {
      const said = written.read(value, path, reading);
      const found = said && oneOf(said, value, path, reading);
      if (found === undefined) return undefined;
      const burnt = said?.fuel === undefined ? {} : { fuel: said.fuel };
      if (found.pulls.length > 0) return { from: 'pulls', pulls: found.pulls, ...burnt };
      if (found.rows === null) return undefined;
      const { rows } = found;
      const tabled = made({
        columns: () => columnsOf(rows, [...path, 'table'], reading),
        air: found.air,
        hasWeather: hasKey(value, 'weather'),
        path,
        reading,
      });
      return tabled && { ...tabled, ...burnt };
    },
  };
}

/** Whether a key is written, in whatever capitals: what was refused under it was told already. */
const hasKey = (value: unknown, wanted: string): boolean =>
  Object.keys(value as object).some((key) => key.toLowerCase() === wanted);

interface Found {
  pulls: string[];
  rows: HeadedTable | null;
  air: AirState | null;
}

function oneOf(
  written: { pull?: string; pulls?: string[]; table?: HeadedTable; weather?: AirState },
  value: unknown,
  path: WrittenPath,
  reading: Reading,
): Found | undefined {
  const { pull, pulls = [], table: rows = null, weather = null } = written;
  const named = [...(pull === undefined ? [] : [pull]), ...pulls];
  // A table that was refused said so itself.
  const hasTable = rows !== null || hasKey(value, 'table');
  if (named.length > 0 && hasTable)
    return refuse(reading, path, 'match-one-of', 'gives pulls and a table. Keep one of the two.');
  if (named.length === 0 && !hasTable)
    return refuse(
      reading,
      path,
      'match-one-of',
      'gives neither a pull nor a table. Write "pull: Pull 3" for one of the book, or "table: |" with engine speed and brake power.',
    );
  return { pulls: named, rows, air: weather };
}

/** Of the naturally aspirated engine. */
export const baseline = (): Shape<WrittenBaseline> =>
  pullsOrTable(
    BASELINE_COLUMNS,
    'What the engine does without the supercharger, as observed in its own air: one naturally aspirated pull of it, of the book (pull) or as a table.',
    ({ columns, air, hasWeather, path, reading }) => {
      if (air === null) {
        if (!hasWeather)
          refuse(
            reading,
            [...path, 'weather'],
            'match-missing',
            'is missing: without the air in which the table was made its power says nothing of another day. Write "weather: { pressure: 99 kPa, temperature: 25 °C, relativeHumidity: 40 % }".',
          );
        return undefined;
      }
      const column = columns();
      return {
        from: 'table' as const,
        curve: {
          engineSpeedRpm: column('engineSpeed')!,
          brakePower: column('brakePower')!,
          airFlow: column('airFlow'),
          frictionPower: column('frictionPower'),
          manifoldPressure: column('manifoldPressure'),
          manifoldTemperature: column('manifoldTemperature'),
          lambda: column('lambda'),
          air,
        },
      };
    },
    { fuel: fuel("On which it was pulled; missing: the combination's.") },
  );

/** Boosted pulls to fit to. */
export const fit = (): Shape<NonNullable<MatchFile['fit']>> =>
  pullsOrTable(
    BOOSTED_COLUMNS,
    'Boosted pulls of this combination, to which the match is fitted.',
    ({ columns, air }) => {
      const column = columns();
      return {
        from: 'table' as const,
        pull: {
          engineSpeedRpm: column('engineSpeed')!,
          brakePower: column('brakePower')!,
          boost: column('boost'),
          chargeTemperature: column('chargeTemperature'),
          dischargeTemperature: column('dischargeTemperature'),
          airFlow: column('airFlow'),
          impellerSpeedRpm: column('impellerSpeed'),
          air,
        },
      };
    },
  );

/** Columns of a table with its rows in rising engine speed; a speed twice is said and its second row dropped. */
export function columnsOf(
  rows: HeadedTable,
  path: WrittenPath,
  reading: Reading,
): (field: string) => number[] | null {
  const speeds = rows.columns.get('engineSpeed')!.values as number[];
  const order = speeds.map((_, row) => row).sort((one, other) => speeds[one]! - speeds[other]!);
  const kept = order.filter((row, at) => at === 0 || speeds[row] !== speeds[order[at - 1]!]);
  if (kept.length < order.length) {
    const twice = speeds.find((speed, row) => speeds.indexOf(speed) !== row)!;
    const message = `${path.join('.')}: ${twice} r/min stands there twice; the first row counts.`;
    reading.remarks.push(atPlace(reading, path, remark('caution', 'match-speed-twice', message)));
  }
  return (field) => {
    const values = wholeColumn(rows, field, path, reading);
    return values === null ? null : kept.map((row) => values[row]!);
  };
}
