import { existsSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openBook } from '../open-book.ts';
import { importedFile } from '../testing/imported-file.ts';
import { temporaryFolder } from '../testing/temporary-folder.ts';
import { backUpBook } from './backup-book.ts';
import { checkBackup } from './check.ts';
import { backupsIn } from './model.ts';
import { thinBackups, tooMany } from './thin.ts';

const NOW = new Date('2026-11-25T12:00:00.000Z');
const DAY_MS = 86_400_000;
const daysAgo = (days: number) => new Date(NOW.getTime() - days * DAY_MS).toISOString();

test('one a day for a year, thinned each day: by hand, 8 of days, the rest of 8 weeks, then a month each', () => {
  let kept: string[] = [];
  for (let day = 365; day >= 0; day--) {
    kept.push(daysAgo(day));
    const away = new Set(tooMany(kept, new Date(Date.parse(daysAgo(day)))));
    kept = kept.filter((at) => !away.has(at));
  }
  const ages = kept.map((at) => Math.round((NOW.getTime() - Date.parse(at)) / DAY_MS));
  expect(ages.filter((age) => age <= 7)).toEqual([7, 6, 5, 4, 3, 2, 1, 0]);
  // By the calendar: 2026-11-25 is a Wednesday. Eight days before is a Tuesday, the newest of its week that is older than
  // seven days; of the weeks before that the Sundays are the newest.
  expect(ages.filter((age) => age > 7 && age <= 56)).toEqual([52, 45, 38, 31, 24, 17, 10, 8]);
  const months = kept.filter((_, index) => ages[index]! > 56).map((at) => at.slice(0, 7));
  // September too: its last Sunday is older than eight weeks.
  expect(months).toEqual(
    ['2025-11', '2025-12', '2026-01', '2026-02', '2026-03', '2026-04', '2026-05', '2026-06'].concat([
      '2026-07',
      '2026-08',
      '2026-09',
    ]),
  );
});

test('whatever there is: the newest stays, the last week stays, each span keeps one, twice is once', () => {
  const times = fc.array(
    fc.integer({ min: -5, max: 1500 * 24 }).map((hours) => daysAgo(hours / 24)),
    {
      minLength: 1,
      maxLength: 60,
    },
  );
  fc.assert(
    fc.property(times, (given) => {
      const all = [...new Set(given)].sort();
      const away = tooMany(all, NOW);
      const kept = all.filter((at) => !away.includes(at));
      expect(kept).toContain(all.at(-1));
      for (const at of away) {
        expect(NOW.getTime() - Date.parse(at)).toBeGreaterThan(7 * DAY_MS);
        // Not a month of which nothing is left, and always a later one.
        const near = kept.filter((one) => one > at && Date.parse(one) - Date.parse(at) < 31 * DAY_MS);
        expect(near.length).toBeGreaterThan(0);
      }
      expect(tooMany(kept, NOW)).toEqual([]);
    }),
    { seed: 7 },
  );
});

test('on a disk: the copies go, with what told of them; originals and what is ours stay; all that is left is whole', async () => {
  const book = await openBook(temporaryFolder(), { create: { name: 'Shop' } });
  const to = temporaryFolder();
  for (const [index, days] of [400, 399, 30, 29, 3, 1].entries()) {
    const { file, bytes, pulls } = importedFile(`file ${index}`);
    await book.addFileWithPulls(file, bytes, pulls);
    await backUpBook(book.folder, to, new Date(daysAgo(days)));
  }
  await book.close();
  writeFileSync(join(to, 'book-letter.txt'), 'mine');
  const lost = join(to, 'book-2026-01-01T00-00-00-000Z.sqlite.part');
  const fresh = join(to, 'book-2026-11-25T11-59-00-000Z.sqlite.part');
  for (const [path, days] of [
    [lost, 2],
    [fresh, 0],
  ] as const) {
    writeFileSync(path, 'half');
    utimesSync(path, new Date(daysAgo(days)), new Date(daysAgo(days)));
  }
  const away = await thinBackups(to, NOW);
  // 400 and 399 days ago are the 21st and 22nd of October 2025; 30 and 29 are Monday and Tuesday of one week.
  expect(away.map(({ madeAt }) => madeAt)).toEqual([daysAgo(30), daysAgo(400)]);
  const left = (await backupsIn(to)).map(({ madeAt }) => madeAt);
  expect(left).toEqual([1, 3, 29, 399].map(daysAgo));
  for (const at of left) expect((await checkBackup(to, at)).faults).toEqual([]);
  expect(readdirSync(to).filter((name) => name.endsWith('.sqlite'))).toHaveLength(4);
  expect(existsSync(join(to, 'book-letter.txt'))).toBe(true);
  expect([existsSync(lost), existsSync(fresh)]).toEqual([false, true]);
});
