import { readFileSync } from 'node:fs';

/** One row of a map, in the file's own units. */
export interface MapRow {
  rpm: number;
  torqueNm: number;
  fuelGramPerS: number;
  gramPerKwh: number;
}

/** Reads a map beside this file without any of the product's own reading. */
export function mapRows(number: 1 | 2 | 3): MapRow[] {
  const text = readFileSync(new URL(`./map-${number}.csv`, import.meta.url), 'utf8');
  return text
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => {
      const [rpm, torqueNm, fuelGramPerS, gramPerKwh] = line.split(',').map(Number);
      return { rpm: rpm!, torqueNm: torqueNm!, fuelGramPerS: fuelGramPerS!, gramPerKwh: gramPerKwh! };
    });
}

/** Highest torque of each speed, the speeds rising. */
export function topRows(rows: readonly MapRow[]): MapRow[] {
  const top = new Map<number, MapRow>();
  for (const row of rows) if (row.torqueNm > (top.get(row.rpm)?.torqueNm ?? 0)) top.set(row.rpm, row);
  return [...top.values()].sort((one, other) => one.rpm - other.rpm);
}
