import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: [
            'packages/**/*.test.ts',
            'apps/**/*.test.ts',
            'checks/**/*.test.ts',
            'studies/**/*.test.ts',
            'tools/**/*.test.ts',
          ],
          exclude: ['**/node_modules/**', '**/dist/**', '**/*.browser.test.ts', '**/*.alone.test.ts'],
          testTimeout: 30_000,
          hookTimeout: 60_000,
          // Both cores of a test's machine; left alone, one would be kept free.
          maxWorkers: 2,
          // Of tests that say so themselves: those that start programs and wait for them.
          maxConcurrency: 2,
          // Modules are loaded once a core, not once a file: a third of the time went into loading them again.
          isolate: false,
        },
      },
      {
        // Those that put a stand-in in a module's place have their modules for themselves.
        test: { name: 'unit-alone', include: ['checks/**/*.alone.test.ts'], maxWorkers: 2 },
      },
      {
        test: {
          name: 'browser',
          include: ['apps/web/**/*.browser.test.ts'],
          globalSetup: ['apps/web/browser/demo-book.ts'],
          testTimeout: 60_000,
          hookTimeout: 90_000,
          // A busy machine takes longer than the usual second; nothing here is about time.
          expect: { poll: { timeout: 15_000 } },
          // Most of a screen's test is waiting: two files at a time fill both cores.
          maxWorkers: 2,
          // Pages that only look are looked at three at a time: much of it is waiting for pages to settle.
          maxConcurrency: 3,
        },
      },
    ],
  },
});
