import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildSync } from 'esbuild';

const FOLDER = join(import.meta.dirname, '..', '..', 'dist', 'testing');
const made = new Map<string, string[]>();

/**
 * A program of this folder put into one plain file, with what Node.js is to be started with to run it: that starts in a tenth of the time that
 * its sources take, and the tests start it a hundred times.
 *
 * @example spawn(process.execPath, [...asProgram('importer'), folder, prefix])
 */
export function asProgram(name: 'act-once' | 'importer' | 'try-book'): string[] {
  const before = made.get(name);
  if (before !== undefined) return before;
  const { outputFiles } = buildSync({
    entryPoints: [join(import.meta.dirname, `${name}.ts`)],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    external: ['better-sqlite3', 'better-sqlite3-for-node-22'],
  });
  mkdirSync(FOLDER, { recursive: true });
  const file = join(FOLDER, `${name}.mjs`);
  // Other files of tests may be making, and running, the same one.
  const part = `${file}.${process.pid}.part`;
  writeFileSync(part, outputFiles[0]!.contents);
  renameSync(part, file);
  made.set(name, [file]);
  return [file];
}
