import { HOURS_A_PULL } from '@pullbook/core/compare';
import {
  type Cluster,
  clustersOf,
  type InductionClass,
  inductionOf,
  type PullDigest,
} from '@pullbook/core/shop';
import type { Book, DigestRow } from '@pullbook/store';
import { listInBackground, listKey } from './listed-pulls.ts';
import { unpackedDigest } from './packed-digest.ts';

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
  /** What they were read under: settings of the list, and the last entry of the log that counts for them. */
  asOf: string;
  digests: Promise<ShopDigests>;
}

const kept = new WeakMap<Book, KeptDigests>();

/** Pulls that are waited for, a second or so; more are read in the background, and what was read so far stands meanwhile. */
const WAITED_FOR = 80;

/**
 * Every pull's digest, read once until something is written that counts for them, or until all pulls are read. Who asks
 * never waits for more than a few pulls: those that are not read yet are counted in `unread`.
 */
export async function shopDigestsOf(book: Book): Promise<ShopDigests> {
  const key = await listKey(book);
  const asOf = `${key} ${await book.digestsAsOf()}`;
  const whole = kept.get(book);
  if (whole?.asOf === asOf) {
    const known = await whole.digests;
    if (known.unread === 0) return known;
  }
  let missing = (await book.unlisted(key, WAITED_FOR + 1)).ids.length;
  if (missing > 0) {
    const reading = listInBackground(book);
    if (missing <= WAITED_FOR) {
      await reading;
      missing = (await book.unlisted(key, WAITED_FOR + 1)).ids.length;
    }
  }
  const stamp = `${asOf} ${missing}`;
  const known = kept.get(book);
  if (known !== undefined && known.asOf === asOf && (await known.digests).stamp === stamp)
    return known.digests;
  const digests = readDigests(book, key, stamp);
  kept.set(book, { asOf, digests });
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

function digestFrom(
  row: DigestRow,
  fed: ReadonlyMap<string, InductionClass | null>,
  bookIsInvented: boolean,
): PullDigest | null {
  if (row.digest === null) return null;
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
    footing: row.digest.runAs,
    ...unpackedDigest(row.digest.values),
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
