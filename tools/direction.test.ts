import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { CORE_ORDER, DEMO_MAY_NOT_USE, EXCEPTIONS, ROOMS } from './direction-table.ts';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
// Not part of what runs for people: built files, fonts, makers of generated files, and helpers of tests ('testing', 'browser').
const SKIPPED = new Set(['node_modules', 'dist', 'fonts', 'tools', 'bin', 'browser', 'testing']);

function sources(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return SKIPPED.has(name) ? [] : sources(path);
    return /\.(ts|tsx)$/.test(name) && !/\.test\.tsx?$|\.config\.ts$|\.test-/.test(name) ? [path] : [];
  });
}

/** Static, re-exporting, dynamic and type imports of a source text. */
function importsOf(text: string): { to: string; typeOnly: boolean }[] {
  const found = text.matchAll(
    /(?:^|[\s;}])(?:import|export)(\stype)?\s[^'"`;]*?from\s*['"]([^'"]+)['"]|import\s*\(\s*['"]([^'"]+)['"]\s*\)|(?:^|\n)\s*import\s*['"]([^'"]+)['"]/g,
  );
  return [...found].map((match) => ({
    to: (match[2] ?? match[3] ?? match[4])!,
    typeOnly: match[1] !== undefined,
  }));
}

/** Name of the outside package of a specifier: `csv-parse/sync` is `csv-parse`. */
function packageOf(specifier: string): string {
  const parts = specifier.split('/');
  return specifier.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0]!;
}

/** As the table names it: a package, or a module of Node.js without what is within it. */
const nameOf = (specifier: string): string =>
  specifier.startsWith('node:') ? specifier.split('/')[0]! : packageOf(specifier);

const excepted = (from: string, to: string) => EXCEPTIONS.some((e) => e.from === from && e.to === to);

function strayArrows(folder: string): string[] {
  const room = ROOMS.find((r) => r.folder === folder)!;
  const strays: string[] = [];
  for (const path of sources(join(root, folder))) {
    const from = relative(root, path).split(sep).join('/');
    for (const { to, typeOnly } of importsOf(readFileSync(path, 'utf8'))) {
      if (to.startsWith('.')) {
        const target = relative(join(root, folder), resolve(dirname(path), to));
        if (target.startsWith('..') && !target.endsWith('.ttf') && !target.endsWith('.css'))
          strays.push(`${from} -> ${to}`);
        continue;
      }
      if (to.startsWith('@pullbook/')) {
        const [name, part] = to.slice('@pullbook/'.length).split('/');
        const usable = typeOnly ? [...room.uses, ...(room.typesOf ?? [])] : room.uses;
        const allowed = usable.includes(name!) || usable.includes(`${name}/${part}`);
        const ofTypes = typeOnly && (room.typesOf ?? []).includes(`${name}/${part}`);
        const barred = folder === 'packages/demo' && !ofTypes && DEMO_MAY_NOT_USE.includes(`${name}/${part}`);
        if ((!allowed || barred) && !excepted(from, to)) strays.push(`${from} -> ${to}`);
        continue;
      }
      if (to.endsWith('.css')) continue;
      if (!room.outside.includes(nameOf(to))) strays.push(`${from} -> ${to}`);
    }
  }
  return strays;
}

describe('direction of imports', () => {
  test('every workspace package is in the table', () => {
    const folders = ['packages', 'apps'].flatMap((top) =>
      readdirSync(join(root, top)).map((name) => `${top}/${name}`),
    );
    expect(ROOMS.map((room) => room.folder).sort()).toEqual(folders.sort());
  });

  test.each(ROOMS.map((room) => [room.folder, room.why]))('%s: %s', (folder) => {
    expect(sources(join(root, folder)).length).toBeGreaterThan(0);
    expect(strayArrows(folder)).toEqual([]);
  });

  test.each(ROOMS.map((room) => [room.folder]))('%s is allowed nothing that it does not use', (folder) => {
    const { uses, typesOf = [], outside } = ROOMS.find((room) => room.folder === folder)!;
    const used = new Set(
      sources(join(root, folder)).flatMap((path) =>
        importsOf(readFileSync(path, 'utf8')).map(({ to }) =>
          to.startsWith('@pullbook/') ? to.slice('@pullbook/'.length) : nameOf(to),
        ),
      ),
    );
    const isUsed = (room: string) => [...used].some((one) => one === room || one.startsWith(`${room}/`));
    expect([...uses, ...typesOf].filter((room) => !isUsed(room))).toEqual([]);
    expect(outside.filter((name) => !used.has(name))).toEqual([]);
  });

  test('core folders are all in the order, and each uses only those above it', () => {
    const src = join(root, 'packages/core/src');
    expect(readdirSync(src).sort()).toEqual([...CORE_ORDER].sort());
    const strays: string[] = [];
    for (const [place, folder] of CORE_ORDER.entries()) {
      for (const path of sources(join(src, folder))) {
        for (const { to } of importsOf(readFileSync(path, 'utf8'))) {
          const target = to.startsWith('.') ? relative(src, resolve(dirname(path), to)).split(sep)[0]! : to;
          const above = (CORE_ORDER as readonly string[]).slice(0, place + 1);
          if (!above.includes(target)) strays.push(`${relative(src, path)} -> ${to}`);
        }
      }
    }
    expect(strays).toEqual([]);
  });

  test('the reader of imports sees each form', () => {
    const text = `import a from 'a';\nimport { b,\n c } from "b/x";\nexport * from './c.ts';\nimport 'd';\nconst e = await import('e');\nimport type { F } from 'f';`;
    expect(importsOf(text).map((one) => one.to)).toEqual(['a', 'b/x', './c.ts', 'd', 'e', 'f']);
    expect(importsOf(text).map((one) => one.typeOnly)).toEqual([false, false, false, false, false, true]);
  });
});
