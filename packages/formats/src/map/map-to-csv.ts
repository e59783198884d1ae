import type { WrittenMap } from '../match/model.ts';

/**
 * A compressor map as open CSV, in inside units and full precision: `readMapText` reads the same map back, bit for bit.
 *
 * @example mapToCsv(map).split('\n')[0] // '# name: Shop blower no. 2'
 */
export function mapToCsv({ name, form, reference, geometry, points, ...rest }: WrittenMap): string {
  const line = (key: string, value: number | string | null, unit = '') =>
    value === null ? [] : [asOneCell(`# ${key}: ${value}${unit === '' ? '' : ` ${unit}`}`)];
  return [
    ...line('name', name.replace(/[\r\n]+/g, ' ')),
    ...line('form', form),
    ...line('reference pressure', reference.pressure, 'Pa'),
    ...line('reference temperature', reference.temperature, 'K'),
    ...line('wheel exit diameter', geometry.wheelExitDiameter, 'm'),
    ...line('wheel inlet diameter', geometry.wheelInletDiameter, 'm'),
    ...line('blades', geometry.blades),
    ...line('backsweep', geometry.backsweep, 'rad'),
    ...line('left end', rest.leftEnd),
    ...(rest.origin === 'not stated' ? [] : line('origin', rest.origin)),
    ...(rest.invented ? line('invented', 'yes') : []),
    ...(rest.notes === '' ? [] : rest.notes.split(/\r\n|\r|\n/).flatMap((note) => line('notes', note))),
    'flow [kg/s],pressure ratio,speed [r/min],efficiency',
    ...points.map(({ flow, pressureRatio, speedRpm, efficiency }) =>
      [flow, pressureRatio, speedRpm, efficiency ?? ''].join(','),
    ),
    '',
  ].join('\n');
}

/** A line that ends like the empty cells a spreadsheet puts there is quoted, so that it stays whole. */
const asOneCell = (line: string): string =>
  /[,;\t]{2,}$/.test(line) ? `"${line.replaceAll('"', '""')}"` : line;
