import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BookContents, mergeBooks, restoreContents } from '@pullbook/store';
import { exportBook, openBook, restoreBook } from '@pullbook/workshop';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type GeneratedBook, generatedBook } from './generated-book.ts';

const published = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'docs', 'book.schema.json'), 'utf8'),
);
const validate = new Ajv2020({ strict: true, allErrors: true, strictTypes: false }).compile(published);

/** Every book is written to the disk some five times, each write flushed; more on a busy machine. */
const TIME_LIMIT_MS = 240_000;

/** Works in a folder of its own. */
async function inFolder(work: (folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'pullbook-generated-'));
  try {
    await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function made(folder: string, { contents, originals }: GeneratedBook): Promise<BookContents> {
  const { pulls, ...rest } = contents;
  const book = await restoreContents(
    folder,
    { ...rest, pulls: pulls.map(({ channels: _, ...head }) => head) },
    {
      channelsOf: ({ id }) => pulls.find((one) => one.id === id)!.channels,
      originalOf: ({ hash }) => originals.get(hash)!,
    },
  );
  const written = await book.contents();
  await book.close();
  return written;
}

async function contentsOf(folder: string): Promise<BookContents> {
  const book = await openBook(folder);
  try {
    return await book.contents();
  } finally {
    await book.close();
  }
}

test('any whole book: kept as given, exported as the schema says, restored the same, originals byte for byte', {
  timeout: TIME_LIMIT_MS,
}, async () => {
  const met = new Set<string>();
  await fc.assert(
    fc.asyncProperty(generatedBook('one'), (given) =>
      inFolder(async (folder) => {
        const at = (name: string) => join(folder, name);
        const written = await made(at('book'), given);
        expect(written).toEqual({ ...given.contents, info: written.info });
        const book = await openBook(at('book'));
        expect(await exportBook(book, at('export'))).toMatchObject({ ok: true });
        await book.close();
        validate(JSON.parse(readFileSync(join(at('export'), 'book.json'), 'utf8')));
        expect(validate.errors).toBeNull();
        const restored = await restoreBook(at('export'), at('restored'));
        expect(restored).toMatchObject({ ok: true });
        expect(await contentsOf(at('restored'))).toEqual(written);
        const back = await openBook(at('restored'));
        for (const [hash, bytes] of given.originals)
          expect(new Uint8Array(await back.original(hash))).toEqual(bytes);
        await back.close();
        for (const [kind, list] of Object.entries(written)) if (list.length > 0) met.add(kind);
        for (const { kind } of written.withdrawn) met.add(`withdrawn ${kind}`);
      }),
    ),
    { seed: 11, numRuns: 20 },
  );
  // Otherwise a kind was not put to the test.
  for (const kind of [
    'cells',
    'pulls',
    'files',
    'layouts',
    'silenced',
    'predictions',
    'withdrawn',
    'log',
    'withdrawn file',
  ])
    expect([...met]).toContain(kind);
});

/** What must be in a book after a merge, whichever way: everything but settings, whose owner's stay. */
const things = ({
  pulls,
  trials,
  combinations,
  engines,
  cells,
  packages,
  setUps,
  sessions,
  files,
  layouts,
  silenced,
  predictions,
}: BookContents) => {
  const lists: (readonly object[])[] = [
    pulls,
    trials,
    combinations,
    engines,
    cells,
    packages,
    setUps,
    sessions,
  ];
  return [...lists, files, layouts, silenced, predictions].map((list) =>
    list.map((one) => JSON.stringify(plain(one))).sort(),
  );
};

/** Values bit for bit in JSON: it has no word for what is not a number, nor for minus nothing. */
const plain = (one: object): object =>
  'channels' in one
    ? {
        ...one,
        channels: (one as { channels: { values: Float64Array }[] }).channels.map((channel) => ({
          ...channel,
          values: Buffer.from(channel.values.buffer).toString('base64'),
        })),
      }
    : one;

test('any two books that never met: merged either way they hold all of both, and once more changes nothing', {
  timeout: TIME_LIMIT_MS,
}, async () => {
  await fc.assert(
    fc.asyncProperty(generatedBook('one'), generatedBook('two'), (first, second) =>
      inFolder(async (folder) => {
        const at = (name: string) => join(folder, name);
        const [one, two] = [await made(at('one'), first), await made(at('two'), second)];
        cpSync(at('one'), at('forward'), { recursive: true });
        cpSync(at('two'), at('back'), { recursive: true });
        await mergeBooks(at('forward'), at('two'), { dryRun: false });
        await mergeBooks(at('back'), at('one'), { dryRun: false });
        const [forward, back] = [await contentsOf(at('forward')), await contentsOf(at('back'))];
        expect(things(forward)).toEqual(things(back));
        const both = things(one).map((list, kind) => [...new Set([...list, ...things(two)[kind]!])].sort());
        // Originals that happen to be the same are one file, under the name it has here.
        if (one.files.every(({ hash }) => !second.originals.has(hash))) expect(things(forward)).toEqual(both);
        const hidden = (book: BookContents) => book.withdrawn.map(({ kind, id }) => `${kind} ${id}`).sort();
        expect(hidden(forward)).toEqual([...new Set([...hidden(one), ...hidden(two)])].sort());
        expect([forward.settings, back.settings]).toEqual([one.settings, two.settings]);
        const uids = new Set(forward.log.map(({ uid }) => uid));
        for (const { uid } of [...one.log, ...two.log]) expect(uids).toContain(uid);
        const again = await mergeBooks(at('forward'), at('two'), { dryRun: false });
        expect(again).toMatchObject({ added: {}, taken: [], conflicts: [], renamed: [], logEntries: 0 });
        expect(await contentsOf(at('forward'))).toEqual(forward);
      }),
    ),
    { seed: 12, numRuns: 8 },
  );
});
