import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Face, FONT_FILES } from '@pullbook/charts';

const urls = Object.values(FONT_FILES).map(({ url }) => url);
const nameOf = (url: URL): string => url.pathname.split('/').at(-1) ?? '';

/** Where the fonts may lie, seen from a folder on the way up: beside a built program, and in the source tree. */
const PLACES = ['fonts', 'packages/charts/fonts'];

/**
 * Paths of the shipped TTFs. In the source tree they lie where `FONT_FILES` says; a bundled program has moved away from
 * there, so they are looked for upwards from the running file. Throws where they are missing: a still without its
 * letters must not be written.
 */
export function fontPaths(): string[] {
  const own = urls.map((url) => fileURLToPath(url));
  return own.every((path) => existsSync(path)) ? own : fontPathsAbove(import.meta.url);
}

/** The one of a face. */
export function fontPathOf(face: Face): string {
  const name = nameOf(FONT_FILES[face].url);
  return fontPaths().find((path) => basename(path) === name)!;
}

/** The same, looked for in the folders above a file. */
export function fontPathsAbove(fileUrl: string): string[] {
  for (let folder = dirname(fileURLToPath(fileUrl)); ; folder = dirname(folder)) {
    for (const place of PLACES) {
      const paths = urls.map((url) => join(folder, place, nameOf(url)));
      if (paths.every((path) => existsSync(path))) return paths;
    }
    if (folder === dirname(folder)) break;
  }
  throw new Error(
    `The fonts ${urls.map(nameOf).join(', ')} are not where they were installed. Install again, or put them into a folder "fonts" beside the program.`,
  );
}
