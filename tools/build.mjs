// Builds what people run: the command line as one file, and the screens. Runs at the end of `npm ci` by itself.
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { build as bundle } from 'esbuild';
import { build as buildScreens } from 'vite';
import { root } from './setup.mjs';

// Packages with native parts or files of their own beside them stay outside of the bundle.
const external = [
  'better-sqlite3',
  'better-sqlite3-for-node-22',
  '@resvg/resvg-js',
  'fastify',
  '@fastify/*',
  'pino',
  'pdfkit',
  'subset-font',
];

async function buildCommandLine() {
  const outdir = join(root, 'apps/cli/dist');
  await rm(outdir, { recursive: true, force: true });
  await bundle({
    entryPoints: {
      pullbook: join(root, 'apps/cli/src/main.ts'),
      // Run by threads of the program, beside it.
      'long-work': join(root, 'packages/workshop/src/long-work/thread.ts'),
    },
    outdir,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    chunkNames: 'rooms/[name]-[hash]',
    format: 'esm',
    platform: 'node',
    target: 'node20.19',
    sourcemap: true,
    external,
    // Bundled CommonJS packages call require(); an ES module has none of its own.
    banner: {
      js: "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
}

await Promise.all([
  buildCommandLine(),
  buildScreens({
    root: join(root, 'apps/web'),
    configFile: join(root, 'apps/web/vite.config.ts'),
    logLevel: 'warn',
  }),
]);
