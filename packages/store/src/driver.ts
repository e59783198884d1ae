import { createRequire } from 'node:module';
import type BetterSqlite3 from 'better-sqlite3';

/** The first Node.js line that the newer driver takes. */
const NEWER_FROM = 22;
const lineOfNode = Number(process.versions.node.split('.')[0]);

/**
 * SQLite for this Node.js. better-sqlite3 12 is the last line for Node 20, and aborts the whole process on Node 24.19 and
 * later at the next garbage collection (its objects take back a hook when there is no environment to take it from);
 * line 13 mends that and needs Node 22. Both have the same functions, so one of the two is loaded.
 */
export const DRIVER_NAME = lineOfNode >= NEWER_FROM ? 'better-sqlite3-for-node-22' : 'better-sqlite3';
export const Database = load(DRIVER_NAME);

function load(name: string): typeof BetterSqlite3 {
  try {
    return createRequire(import.meta.url)(name);
  } catch (cause) {
    throw new Error(
      `The database driver (${name}) does not load on Node.js ${process.versions.node}. Run "npm ci" again with this Node.js; where it has to be compiled, that needs python3, make and g++.`,
      { cause },
    );
  }
}
