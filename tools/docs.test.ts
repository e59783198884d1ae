import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';

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

  // Much of it is waiting for programs: two pages at a time.
  test.concurrent.each(withCommands)('%s: its commands run', { timeout: 240_000 }, async (page) => {
    const folder = mkdtempSync(join(tmpdir(), 'pullbook-docs-'));
    symlinkSync(join(root, 'samples'), join(folder, 'samples'));
    let printed = '';
    for (const line of commandsOf(page).filter((command) => command.startsWith('npx pullbook')))
      printed += await printedBy(line, folder);
    for (const words of SAID[page] ?? []) {
      expect(printed).toContain(words);
      expect(textOf(page), words).toContain(words);
    }
    rmSync(folder, { recursive: true });
  });
});

const DEMO = /^npx pullbook demo --book (\S+)$/u;
const made: { demo: Promise<{ folder: string; printed: string }> | null } = { demo: null };
afterAll(async () => {
  if (made.demo !== null) rmSync((await made.demo).folder, { recursive: true });
});

/** What a command prints. The demo book is made once, and stands as a copy in every other place where a page makes it. */
async function printedBy(line: string, folder: string): Promise<string> {
  const place = DEMO.exec(line)?.[1];
  if (place === undefined) return ranIn(folder, line);
  made.demo ??= (async () => {
    const parent = mkdtempSync(join(tmpdir(), 'pullbook-docs-'));
    return { folder: parent, printed: await ranIn(parent, 'npx pullbook demo --book demo') };
  })();
  const { folder: parent, printed } = await made.demo;
  cpSync(join(parent, 'demo'), join(folder, place), { recursive: true });
  return printed;
}

async function ranIn(folder: string, line: string): Promise<string> {
  const launcher = `${process.execPath} ${join(root, 'apps/cli/bin/pullbook.mjs')}`;
  const child = spawn('sh', ['-c', line.replace(/^npx pullbook/, launcher)], { cwd: folder });
  const [out, err] = [child.stdout, child.stderr].map((stream) => text(stream));
  const [status] = await once(child, 'close');
  const [stdout, stderr] = [await out!, await err!];
  expect(status, `${line}\n${stdout}\n${stderr}`).toBe(0);
  expect(stdout.length, line).toBeGreaterThan(0);
  return stdout;
}
