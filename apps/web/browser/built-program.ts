import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const built = ['../../cli/dist/pullbook.mjs', '../dist/index.html'].map((place) =>
  fileURLToPath(new URL(place, import.meta.url)),
);

/** The program that people start; throws where it or its screens are not built. */
export function builtProgram(): string {
  for (const file of built) {
    if (!existsSync(file)) throw new Error(`${file} is not built yet. Run "npm run build" first.`);
  }
  return fileURLToPath(new URL('../../cli/bin/pullbook.mjs', import.meta.url));
}
