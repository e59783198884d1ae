import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Chance } from './chance.ts';

/** A file that is spoiled. */
export interface Base {
  name: string;
  bytes: Uint8Array;
}

/** All files of a folder and those under it whose names end so, in the order of their names. */
export function filesUnder(folder: string, endings: RegExp, root = folder): Base[] {
  return readdirSync(folder, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) return filesUnder(path, endings, root);
      return endings.test(entry.name)
        ? [{ name: relative(root, path).split(sep).join('/'), bytes: new Uint8Array(readFileSync(path)) }]
        : [];
    });
}

/** A log of a sweep in a layout by chance. */
export function madeBase(chance: Chance): Base {
  const delimiter = chance.oneOf([',', ';', '\t', '|', ' '] as const);
  const mark = delimiter === ',' ? '.' : chance.oneOf(['.', ','] as const);
  const lineEnd = chance.oneOf(['\n', '\r\n', '\r']);
  const rows = chance.whole(2, 300);
  const spare = chance.whole(0, 12);
  const clock = chance.share() < 0.2;
  const names = ['Time', 'Speed', 'Torque', 'Power', ...Array.from({ length: spare }, (_, at) => `Aux${at}`)];
  const units = ['s', 'rpm', 'Nm', 'kW', ...new Array<string>(spare).fill('V')];
  const style = chance.oneOf(['brackets', 'row', 'none'] as const);
  const header =
    style === 'brackets' && delimiter !== ' ' ? names.map((name, at) => `${name} [${units[at]}]`) : names;
  const lines = chance.share() < 0.2 ? ['Invented run', `"for ${delimiter} a test"`] : [];
  lines.push(header.join(delimiter));
  if (style === 'row') lines.push(units.join(delimiter));
  for (let row = 0; row < rows; row++) {
    const speed = 1500 + (4500 * row) / rows;
    const torque = 300 + 60 * Math.sin(row / rows) + chance.share();
    const time = clock
      ? `10:0${Math.floor(row / 600)}:${String((row / 10) % 60).padStart(4, '0')}`
      : (row / 10).toFixed(1);
    const figures = [
      speed,
      torque,
      (torque * speed) / 9549,
      ...Array.from({ length: spare }, () => chance.share()),
    ];
    const cells = figures.map((value) => value.toFixed(chance.whole(0, 4)).replace('.', mark));
    lines.push([time, ...cells].join(delimiter));
    if (chance.share() < 0.005) lines.push(header.join(delimiter));
  }
  return { name: 'made.csv', bytes: new TextEncoder().encode(lines.join(lineEnd) + lineEnd) };
}
