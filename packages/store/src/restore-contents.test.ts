import { expect, test } from 'vitest';
import { openBook } from './open-book.ts';
import { restoreContents } from './restore-contents.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { combination, engine, fileOf, kit, pull, trial } from './testing/things.ts';

test('a book made from the contents of another has the same contents, id, order and log', async () => {
  const first = await openBook(temporaryFolder(), { create: { name: 'First', invented: true } });
  await first.addEngine(engine);
  await first.addPackage(kit);
  await first.addCombination(combination('base'));
  await first.addCombination(combination('blown', '96 mm', 'base'));
  await first.addPulls([pull('by hand')]);
  const { file, bytes } = fileOf('rpm,torque\n2000,300\n');
  await first.addFileWithPulls(file, bytes, [
    pull('from file', { fileHash: file.hash, combinationId: 'base' }),
  ]);
  await first.addPulls([pull('later')]);
  await first.addTrial(
    trial('trial', { pulls: [{ pullId: 'later', key: 'A', role: 'counted', reason: null }] }),
  );
  await first.amendPull('later', { cell: 'cell 2' }, 'wrong cell');
  const contents = await first.contents();
  expect(contents.pulls.map(({ id }) => id)).toEqual(['by hand', 'from file', 'later']);

  const folder = temporaryFolder();
  const second = await restoreContents(folder, await first.outline(), {
    channelsOf: async ({ id }) => (await first.pull(id))!.channels,
    originalOf: ({ hash }) => first.original(hash),
  });
  expect(await second.contents()).toEqual(contents);
  expect(new Uint8Array(await second.original(file.hash))).toEqual(bytes);
  await second.addEngine({ ...engine, id: 'another' });
  const nothing = { channelsOf: () => [], originalOf: () => bytes };
  await expect(restoreContents(folder, contents, nothing)).rejects.toMatchObject({ code: 'exists' });
  await first.close();
  await second.close();
});
