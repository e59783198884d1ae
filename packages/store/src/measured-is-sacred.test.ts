import { expect, onTestFinished, test } from 'vitest';
import { insertBookRow, openConnection } from './open-book.ts';
import { bookOver } from './sqlite-book.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { fileOf, pull } from './testing/things.ts';

async function bookWithPull() {
  const connection = await openConnection(temporaryFolder(), 100, (opened) =>
    insertBookRow(opened, { id: 'book', name: 'Test book', invented: true, createdAt: '2026-03-14' }),
  );
  const book = bookOver(connection);
  onTestFinished(() => book.close());
  const { file, bytes } = fileOf('rpm,torque\n2000,300\n');
  await book.addFileWithPulls(file, bytes, [pull('one', { fileHash: file.hash })]);
  return { book, database: connection.database, before: JSON.stringify(await book.contents()) };
}

test.each([
  `update channel set samples = zeroblob(24)`,
  `update channel set name = 'x'`,
  `delete from channel`,
  `insert or replace into channel select pullId, place, meaning, 'x', unit, kind, origin, count, samples from channel`,
  `insert into channel select pullId, 9, meaning, name, unit, kind, origin, count, samples from channel limit 1`,
  `update pull set form = 'summary'`,
  `update pull set summary = '{}'`,
  `update pull set fileHash = null`,
  `update pull set channelsHash = ''`,
  `update pull set id = 'two'`,
  `delete from pull`,
  `update file set name = 'x'`,
  `delete from file`,
  `insert or replace into file select * from file`,
  `update log set reason = 'x'`,
  `delete from log`,
])('the database itself refuses: %s', async (statement) => {
  const { book, database, before } = await bookWithPull();
  expect(() => database.exec(statement)).toThrow(/never altered/);
  expect(JSON.stringify(await book.contents())).toBe(before);
});

test('channels altered past the database are told when the pull is read', async () => {
  const { book, database } = await bookWithPull();
  database.exec('drop trigger channelIsNotAltered');
  database.exec(`update channel set samples = zeroblob(24) where place = 1`);
  await expect(book.pull('one')).rejects.toMatchObject({
    code: 'damaged',
    message: expect.stringContaining('"Pull one"'),
  });
});
