import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const pages = [
  ...readdirSync(root).filter((name) => name.endsWith('.md')),
  ...readdirSync(join(root, 'docs'))
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`),
  'checks/LEDGER.md',
  'samples/README.md',
];
const textOf = (page: string) => readFileSync(join(root, page), 'utf8');

/** Lines of the fenced `sh` blocks of a page. */
function commandsOf(page: string): string[] {
  const blocks = [...textOf(page).matchAll(/```sh\n([\s\S]*?)```/g)];
  return blocks.flatMap((block) => block[1]!.split('\n')).filter((line) => line.trim() !== '');
}

/** What a page says that the program says: it stands in the page, and in what its commands print. */
const SAID: Record<string, string[]> = {
  'docs/from-question-to-verdict.md': [
    'A B B A A B B A',
    'after 4 and 8 counted pulls',
    'look 1 of 2 planned',
    'ikely',
    'What the band is made of',
    'V29',
  ],
  'docs/publish.md': ['no longer so'],
};

describe('documents', () => {
  test.each(pages)('%s: links lead somewhere', (page) => {
    const targets = [...textOf(page).matchAll(/\]\(([^)#\s]+)[^)]*\)/g)].map((match) => match[1]!);
    const dead = targets.filter((to) => !/^https?:/.test(to) && !existsSync(join(root, dirname(page), to)));
    expect(dead).toEqual([]);
  });

  test('npm scripts named anywhere are there', () => {
    const scripts = Object.keys(JSON.parse(textOf('package.json')).scripts);
    for (const page of pages) {
      for (const match of textOf(page).matchAll(/npm run ([a-z][a-z:-]*)/g))
        expect(scripts, page).toContain(match[1]);
    }
  });

  const withCommands = pages.filter((page) =>
    commandsOf(page).some((line) => line.startsWith('npx pullbook')),
  );

  test.each(withCommands)('%s: its commands run', { timeout: 240_000 }, (page) => {
    const folder = mkdtempSync(join(tmpdir(), 'pullbook-docs-'));
    symlinkSync(join(root, 'samples'), join(folder, 'samples'));
    const launcher = `${process.execPath} ${join(root, 'apps/cli/bin/pullbook.mjs')}`;
    let printed = '';
    for (const line of commandsOf(page).filter((command) => command.startsWith('npx pullbook'))) {
      const done = spawnSync('sh', ['-c', line.replace(/^npx pullbook/, launcher)], {
        cwd: folder,
        encoding: 'utf8',
      });
      expect(done.status, `${line}\n${done.stdout}\n${done.stderr}`).toBe(0);
      expect(done.stdout.length, line).toBeGreaterThan(0);
      printed += done.stdout;
    }
    for (const words of SAID[page] ?? []) {
      expect(printed).toContain(words);
      expect(textOf(page), words).toContain(words);
    }
    rmSync(folder, { recursive: true });
  });
});
