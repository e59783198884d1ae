/**
 * Who may import whom, as a table with reasons. `direction.test.ts` reads it and fails on any arrow that is not here.
 * Rooms are workspace packages; inside core they are folders, and a folder uses only what stands above it in the list.
 */

/** Folders of packages/core/src in order: each may use those above it. */
export const CORE_ORDER = [
  'remark',
  'numeric',
  'quantity',
  'gas',
  'air',
  'combination',
  'fuel',
  'pull',
  'airpath',
  'fit',
  'scatter',
  'compare',
  'rule',
  'explain',
  'reach',
  'plan',
  'shop',
  'trial',
  'publication',
] as const;

export interface Room {
  /** Folder from the root. */
  folder: string;
  /** Rooms of ours it may use; `core/quantity` means that folder of core only. */
  uses: string[];
  /** Rooms of ours of which it may use types only (`import type`): nothing of them runs in it. */
  typesOf?: string[];
  /** Outside packages and `node:` modules it may use. */
  outside: string[];
  why: string;
}

export const ROOMS: Room[] = [
  {
    folder: 'packages/core',
    uses: [],
    outside: [],
    why: 'Pure computing: no files, clock, network, page or chance; so it runs the same everywhere and can be checked.',
  },
  {
    folder: 'packages/compute',
    uses: [],
    outside: ['node:worker_threads'],
    why: 'Long computations off the main thread: threads or in line, progress, cancelling. Knows no job itself.',
  },
  {
    folder: 'packages/formats',
    uses: ['core'],
    outside: ['hucre', 'yaml'],
    why: 'Bytes to pulls and back. Knows files of the world, nothing of the book or of pictures.',
  },
  {
    folder: 'packages/store',
    uses: ['core'],
    outside: [
      'better-sqlite3',
      'kysely',
      'node:crypto',
      'node:fs',
      'node:module',
      'node:os',
      'node:path',
      'node:timers',
    ],
    why: 'The book. Keeps and finds; never computes a figure.',
  },
  {
    folder: 'packages/charts',
    uses: ['core/quantity'],
    outside: ['d3-array', 'd3-scale', 'd3-shape'],
    why: 'Draws numbers it is given. From core it takes only how a number is written.',
  },
  {
    folder: 'packages/views',
    uses: ['core', 'charts'],
    outside: [],
    why: 'The only place that knows both answers and charts: figures become words, tables and chart descriptions.',
  },
  {
    folder: 'packages/publish',
    uses: ['charts', 'core/remark', 'views'],
    outside: [
      '@resvg/resvg-js',
      'node:child_process',
      'node:crypto',
      'node:fs',
      'node:path',
      'node:url',
      'node:util',
      'node:zlib',
      'pdfkit',
      'subset-font',
    ],
    why: 'Stills, clips and reports for people outside, from the same drawings as the screen.',
  },
  {
    folder: 'packages/demo',
    uses: ['core'],
    typesOf: ['core/airpath'],
    outside: ['pure-rand'],
    why: 'The invented book from seeds. May not use core/compare: it must not explain itself (see DEMO_MAY_NOT_USE).',
  },
  {
    folder: 'packages/workshop',
    uses: ['compute', 'core', 'formats', 'store', 'views', 'publish', 'demo', 'charts'],
    outside: ['fflate', 'node:crypto', 'node:fs', 'node:path', 'node:stream', 'node:url', 'node:zlib'],
    why: 'What can be done to a book, one file an act; the server and the command line are both thin over it.',
  },
  {
    folder: 'apps/server',
    uses: ['core', 'workshop', 'views'],
    outside: [
      'fastify',
      '@fastify/helmet',
      '@fastify/multipart',
      '@fastify/static',
      'zod',
      'node:crypto',
      'node:fs',
      'node:net',
      'node:path',
      'node:stream',
    ],
    why: 'The book over HTTP on loopback.',
  },
  {
    folder: 'apps/cli',
    uses: ['core', 'workshop', 'server', 'views'],
    outside: ['commander', 'picocolors', 'node:fs', 'node:path', 'node:child_process'],
    why: 'Parse, call, print.',
  },
  {
    folder: 'apps/web',
    // The search for a power runs in a worker of the page; what it finds is worded by views.
    uses: ['core/quantity', 'core/reach', 'charts', 'views'],
    typesOf: ['core', 'workshop'],
    outside: [
      // A hash of a file as it is read: the browser's own takes only what stands in memory whole.
      '@noble/hashes',
      '@tanstack/react-query',
      '@tanstack/react-router',
      'fflate',
      'mediabunny',
      'react',
      'react-aria-components',
      'react-dom',
      'tinykeys',
    ],
    why: 'The screens. No arithmetic on physical values: figures come finished from the server.',
  },
];

/** Demo data must come from formulas of its own, or a check on it would be a circle. Of what its room lists as types it may use types. */
export const DEMO_MAY_NOT_USE = ['core/airpath', 'core/compare', 'core/fit', 'core/trial'];

/** Exceptions, each with a name of who owes the clean-up. None today. */
export const EXCEPTIONS: { from: string; to: string; owner: string; why: string }[] = [];
