import { type Combination, isSupercharged } from '@pullbook/core/combination';
import { defaultRecipe, type Pull, type PullView, viewPull } from '@pullbook/core/pull';
import { digestOfCurve } from '@pullbook/core/shop';
import { type Book, BookTrouble, type ListedPull } from '@pullbook/store';
import { type ListView, listView, pullRow } from '@pullbook/views';
import { asCarried } from './as-carried.ts';
import { packedDigest, runAsText } from './packed-digest.ts';
import { settingsOf } from './settings.ts';
import { shopReadingOf } from './shop-reading.ts';

/** Raised when what is remembered of a pull, or how a view comes about, changes: all is then made anew. */
const LIST_VERSION = 3;

/** What a list shows of a pull: in the shop's standard for the screens, as its file carries it for the command line. */
export interface ListedFigures {
  shown: ListView;
  carried: ListView;
}

/** What everything remembered for lists was made by. Another standard or bin width of the shop makes another. */
export async function listKey(book: Book): Promise<string> {
  const { correction, binWidthRpm } = await settingsOf(book);
  return `${LIST_VERSION} ${correction} ${binWidthRpm ?? 'adapted'}`;
}

/** Reads a lot of pulls for the list, those added last first; whether some are left. */
async function listLot(book: Book): Promise<boolean> {
  const key = await listKey(book);
  const { ids, asOf } = await book.unlisted(key, LOT + 1);
  const listed = await listedOf(book, ids.slice(0, LOT), key);
  const isKept = listed.length === 0 || (await book.keepListed(listed, asOf));
  return ids.length > LOT || !isKept;
}

/**
 * Brings the list up to date where few pulls are missing, else begins to in the background. Whether it is up to date.
 */
export async function listRecent(book: Book): Promise<boolean> {
  const { ids } = await book.unlisted(await listKey(book), LOT + 1);
  if (ids.length <= LOT && !reading.has(book)) return ids.length === 0 || !(await listLot(book));
  void listInBackground(book);
  return false;
}

/** What a list shows of these pulls, worked out. A damaged one is found by its name and shows no figures. */
export async function listedOf(book: Book, ids: readonly string[], key: string): Promise<ListedPull[]> {
  if (ids.length === 0) return [];
  const { correction } = await settingsOf(book);
  const shop = await shopReadingOf(book);
  const engines = new Map((await book.engines()).map((one) => [one.id, one.name]));
  const heads = await book.pullHeadsOf(ids);
  const combinations = new Map<string | null, Combination | null>();
  for (const { combinationId } of heads) {
    if (combinationId === null || combinations.has(combinationId)) continue;
    combinations.set(combinationId, await book.combination(combinationId));
  }
  const listed: ListedPull[] = [];
  for (const head of heads) {
    const pull = (await wholeOrNull(book, head.id)) ?? { ...head, channels: [] };
    const combination = combinations.get(head.combinationId) ?? null;
    const view = viewPull(pull, defaultRecipe(correction), shop);
    const shown = listView(view);
    const carriedRecipe = asCarried(pull);
    const carried =
      carriedRecipe.correction === correction ? shown : listView(viewPull(pull, carriedRecipe, shop));
    const file = pull.fileHash === null ? null : await book.file(pull.fileHash);
    const row = pullRow({ pull, view: shown }, combination, { units: 'si', decimalMark: '.' });
    listed.push({
      pullId: pull.id,
      key,
      words: [
        ...wordsOf(pull),
        combination?.name,
        engines.get(combination?.engineId ?? ''),
        file?.name,
        row.recordedAt,
        row.standard,
        ...row.chips.map(({ text }) => text),
      ]
        .filter((text) => text)
        .join(' ')
        .toLowerCase(),
      figures: { shown, carried } satisfies ListedFigures,
      peakPower: shown.peakPower?.value ?? pull.summary?.peakPower ?? null,
      peakTorque: shown.peakTorque?.value ?? pull.summary?.peakTorque ?? null,
      boosted: combination === null ? null : isSupercharged(combination.sheet),
      digest: keptDigest(pull, view),
    });
    // A list of thousands is read beside other work: whoever waits is served in between.
    await new Promise((resolve) => setImmediate(resolve));
  }
  return listed;
}

/** For the shop's figures, in its standard. */
function keptDigest({ tune }: Pull, { curve, correction }: PullView): ListedPull['digest'] {
  if (!curve?.channels.has('power')) return null;
  return { values: packedDigest(digestOfCurve(curve)), runAs: runAsText(tune, String(correction.standard)) };
}

function wordsOf(pull: Pull): (string | null | undefined)[] {
  return [
    pull.name,
    pull.cell,
    pull.operator,
    pull.recordedAt?.slice(0, 10),
    ...Object.values(pull.tune),
    ...Object.values(pull.places),
    ...pull.notes.map(({ text }) => text),
    ...pull.events.map(({ text }) => text),
  ];
}

async function wholeOrNull(book: Book, id: string): Promise<Pull | null> {
  try {
    return await book.pull(id);
  } catch (trouble) {
    if (trouble instanceof BookTrouble && trouble.code === 'damaged') return null;
    throw trouble;
  }
}

const reading = new WeakMap<Book, Promise<void>>();

/** Pulls read at once, and the most that a list waits for; between two such lots others may write. */
const LOT = 20;

/**
 * Reads all pulls for the list in the background, once at a time, so that no list waits for it. It ends when the book is
 * closed under it or cannot be written: what is missing is then read when it is next asked for.
 */
export function listInBackground(book: Book): Promise<void> {
  const running = reading.get(book);
  if (running) return running;
  const run = (async () => {
    try {
      while (await listLot(book));
    } catch {
      // Nothing is lost by it: the list is a memory, and the next look begins where this ended.
    } finally {
      reading.delete(book);
    }
  })();
  reading.set(book, run);
  return run;
}
