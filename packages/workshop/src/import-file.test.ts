import { openBook } from '@pullbook/store';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { amendPull } from './amend-pull.ts';
import { importFile, previewImport } from './import-file.ts';
import { stepTestFile, temporaryBook } from './testing/temporary-book.ts';

let made: Awaited<ReturnType<typeof temporaryBook>>;
beforeAll(async () => {
  made = await temporaryBook();
});
afterAll(() => made.remove());

const accepted = <T>(result: { ok: true; value: T } | { ok: false }): T => {
  if (!result.ok) throw new Error('refused');
  return result.value;
};

describe('importFile', () => {
  test('two programs that import the same file at once end with one pull', async () => {
    const other = await openBook(made.book.folder);
    const file = { name: 'run.csv', bytes: stepTestFile() };
    const reports = await Promise.all([importFile(made.book, file), importFile(other, file)]);
    await other.close();
    const ids = reports.map((one) => accepted(one).pulls[0]!.id);
    expect(new Set(ids).size).toBe(1);
    expect(reports.filter((one) => accepted(one).alreadyKnown)).toHaveLength(1);
    expect(await made.book.pullHeads()).toHaveLength(1);
  });

  test('bytes that were taken back and go in again say so, and a preview says it first', async () => {
    const file = { name: 'again.csv', bytes: stepTestFile(1.7) };
    const codesOf = (one: Awaited<ReturnType<typeof importFile>>) =>
      accepted(one).remarks.map(({ code }) => code);
    expect(codesOf(await importFile(made.book, file))).not.toContain('file-in-again');
    await made.book.undo(null);
    expect(codesOf(await previewImport(made.book, file))).toContain('file-taken-back');
    const again = accepted(await importFile(made.book, file));
    const note = again.remarks.find(({ code }) => code === 'file-in-again')!;
    expect(note.message).toContain('as again.csv, and were taken back on');
    expect(codesOf(await importFile(made.book, file))).toContain('file-already-known');
    await made.book.undo(null);
  });

  test('pulls of one day in one cell share a session; another day starts one', async () => {
    const put = (name: string, scale: number, recordedAt: string) =>
      importFile(made.book, { name, bytes: stepTestFile(scale), details: { recordedAt, cell: 'Cell 2' } });
    await put('a.csv', 1.01, '2026-03-14T10:00:00+01:00');
    await put('b.csv', 1.02, '2026-03-14T23:30:00+01:00');
    await put('c.csv', 1.03, '2026-03-15T00:10:00+01:00');
    const sessions = await made.book.sessions();
    expect(sessions.map((one) => one.day).sort()).toEqual(['2026-03-14', '2026-03-15']);
    const heads = await made.book.pullHeads();
    const sessionOf = (name: string) => heads.find((one) => one.name === name)!.sessionId;
    expect(sessionOf('a')).toBe(sessionOf('b'));
    expect(sessionOf('c')).not.toBe(sessionOf('b'));
  });

  test('an amendment moves a pull to its right session and keeps its channels', async () => {
    const head = (await made.book.pullHeads()).find((one) => one.name === 'c')!;
    const before = await made.book.pull(head.id);
    const amended = await amendPull(
      made.book,
      'c',
      { recordedAt: '2026-03-14T12:00:00+01:00' },
      'clock was wrong',
    );
    expect(amended.ok).toBe(true);
    const after = await made.book.pull(head.id);
    expect(after!.sessionId).not.toBe(before!.sessionId);
    expect(after!.channels).toEqual(before!.channels);
    const entry = (await made.book.log()).find((one) => one.reason === 'clock was wrong');
    expect(entry).toBeDefined();
    expect((await amendPull(made.book, 'c', {}, 'nothing')).ok).toBe(false);
    expect((await amendPull(made.book, 'c', { cell: 'Cell 1' }, ' ')).ok).toBe(false);
  });

  test('a name given to a file is its pull’s', async () => {
    const named = await importFile(made.book, {
      name: 'd.csv',
      bytes: stepTestFile(0.9),
      details: { name: 'Small pulley' },
    });
    expect(accepted(named).pulls[0]!.name).toBe('Small pulley');
  });
});
