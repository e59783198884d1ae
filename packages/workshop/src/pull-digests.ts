import {
  type Cluster,
  clustersOf,
  type InductionClass,
  inductionOf,
  type PullDigest,
} from '@pullbook/core/shop';
import type { Book, DigestRow } from '@pullbook/store';
import { type KeptDigest, listInBackground, listKey } from './listed-pulls.ts';

/** Every pull of the book as the shop's figures need it, and the clusters they form. */
export interface ShopDigests {
  digests: PullDigest[];
  clusters: Cluster[];
  /** Changes with anything they rest on. */
  stamp: string;
  /** Pulls not read yet: they come in the background, and the figures rest on the others. */
  unread: number;
}

interface KeptDigests {
  stamp: string;
  digests: Promise<ShopDigests>;
}

const kept = new WeakMap<Book, KeptDigests>();

/** Pulls that are waited for, a second or so; more are read in the background, and what was read so far stands meanwhile. */
const WAITED_FOR = 80;

/** The digests as of the last entry of the log: made once until something is written or all pulls are read. */
export async function shopDigestsOf(book: Book): Promise<ShopDigests> {
  const key = await listKey(book);
  let state = await book.unlisted(key, WAITED_FOR + 1);
  if (state.ids.length > 0) {
    const reading = listInBackground(book);
    if (state.ids.length <= WAITED_FOR) {
      await reading;
      state = await book.unlisted(key, WAITED_FOR + 1);
    }
  }
  const stamp = `${key} ${state.asOf} ${state.ids.length}`;
  const known = kept.get(book);
  if (known?.stamp === stamp) return known.digests;
  const digests = readDigests(book, key, stamp);
  kept.set(book, { stamp, digests });
  return digests;
}

async function readDigests(book: Book, key: string, stamp: string): Promise<ShopDigests> {
  const { invented } = await book.info();
  const fed = new Map(
    (await book.combinations()).map(({ id, sheet }): [string, InductionClass | null] => [
      id,
      inductionOf(sheet),
    ]),
  );
  const rows = await book.digests(key);
  const digests = rows.flatMap((row) => digestFrom(row, fed, invented) ?? []);
  return {
    digests,
    clusters: clustersOf(digests),
    stamp,
    unread: rows.filter((row) => !row.isListed).length,
  };
}

/** Pulls without a clock follow each other so, in hours: three minutes of waiting and a few of work (common practice, no source). */
const HOURS_A_PULL = 0.25;

function digestFrom(
  row: DigestRow,
  fed: ReadonlyMap<string, InductionClass | null>,
  bookIsInvented: boolean,
): PullDigest | null {
  const curve = row.digest as KeptDigest | null;
  if (curve === null) return null;
  const { standard, fromRpm, stepRpm, logPower } = curve;
  return {
    pullId: row.pullId,
    engineId: row.engineId,
    combinationId: row.combinationId,
    setUpId: row.setUpId,
    sessionId: row.sessionId,
    day: row.recordedAt?.slice(0, 10) ?? null,
    cell: row.cell,
    hours:
      hoursOfDay(row.recordedAt) ?? (row.orderInSession === null ? null : row.orderInSession * HOURS_A_PULL),
    induction: fed.get(row.combinationId ?? '') ?? null,
    footing: footingOf(row.tune, standard),
    fromRpm,
    stepRpm,
    logPower,
    counts:
      row.outcome === 'completed' &&
      row.origin === 'measured' &&
      !row.isSetAside &&
      row.invented === bookIsInvented,
  };
}

/** The time of day as it was written there; `null`: a date alone. */
function hoursOfDay(recordedAt: string | null): number | null {
  const [, hours, minutes, seconds = '0'] =
    /T(\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?/.exec(recordedAt ?? '') ?? [];
  return hours === undefined ? null : Number(hours) + Number(minutes) / 60 + Number(seconds) / 3600;
}

/** What makes pulls no repeats of each other though the hardware is the same: what was tuned, and their standard. */
function footingOf(tuneText: string, standard: string): string {
  const { notes: _, fuelBatch: __, ...tuned } = JSON.parse(tuneText) as Record<string, string>;
  return JSON.stringify([
    standard,
    ...Object.entries(tuned).toSorted(([one], [other]) => (one < other ? -1 : 1)),
  ]);
}
