import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, onTestFinished, test } from 'vitest';
import { openBook } from './open-book.ts';
import { asProgram } from './testing/as-program.ts';
import { PULLS_A_FILE } from './testing/imported-file.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { pull } from './testing/things.ts';

const ROUNDS = 12;

test('a server that amends, a program that imports, another that undoes: nothing torn, nothing lost', async () => {
  const folder = temporaryFolder();
  const server = await openBook(folder, { create: { name: 'Shop' }, lockWaitMs: 60_000 });
  const undoing = await openBook(folder, { lockWaitMs: 60_000 });
  await server.addPulls([pull('kept')]);
  const importer = spawn(process.execPath, [...asProgram('importer'), folder, 'other'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => void importer.kill('SIGKILL'));
  let said = '';
  importer.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  while (!said.includes('accepted ')) await once(importer.stdout, 'data');

  for (let round = 0; round < ROUNDS; round += 1) {
    const amended = server.amendPull('kept', { operator: `shift ${round}` }, `round ${round}`);
    const added = undoing.addPulls([pull(`taken back ${round}`)]);
    await Promise.all([amended, added]);
    const entry = (await undoing.logSince(`pull taken back ${round}`, '')).at(-1)!;
    await Promise.all([undoing.undo(entry.uid), server.stamp('pull kept')]);
  }
  importer.kill('SIGTERM');
  await once(importer, 'close');

  const accepted = said
    .split('\n')
    .slice(0, -1)
    .filter((line) => line.startsWith('accepted ')).length;
  const counts = await server.counts();
  expect(counts.files).toBeGreaterThanOrEqual(accepted);
  expect(counts.pulls).toBe(1 + PULLS_A_FILE * counts.files);
  expect((await server.pull('kept'))!.operator).toBe(`shift ${ROUNDS - 1}`);
  const log = await server.log();
  expect(log.map(({ id }) => id)).toEqual(log.map((_, index) => index + 1));
  expect(log.filter(({ act }) => act === 'undone: pull added')).toHaveLength(ROUNDS);
  await server.close();
  await undoing.close();
});
