import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * Folder of the whole program: walking up from this file (or from the bundle it is part of) to the folder whose
 * `package.json` is named `pullbook`. Throws where there is none: the program was taken apart.
 */
export function programFolder(): string {
  const start = dirname(fileURLToPath(import.meta.url));
  for (let folder = start; ; folder = dirname(folder)) {
    if (programPackage(folder)) return folder;
    if (dirname(folder) === folder) throw new Error(`Pullbook's own folder was not found above ${start}.`);
  }
}

function programPackage(folder: string): { version: string } | null {
  const file = join(folder, 'package.json');
  if (!existsSync(file)) return null;
  const content = JSON.parse(readFileSync(file, 'utf8')) as { name?: string; version?: string };
  return content.name === 'pullbook' ? { version: content.version ?? '0' } : null;
}

/** Version of the program, as in its `package.json`: `0.1.0`. */
export function programVersion(): string {
  return programPackage(programFolder())?.version ?? '0';
}

/** Folder of the shipped fonts (TTF). */
export function fontFolder(): string {
  return join(programFolder(), 'packages', 'charts', 'fonts');
}

/** Folder of the built screens; may not exist before `npm run build`. */
export function webBuildFolder(): string {
  return join(programFolder(), 'apps', 'web', 'dist');
}
