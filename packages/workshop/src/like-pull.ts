import type { AirReading } from '@pullbook/core/air';
import { accepted, type Remark, type Result, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { PullDetails } from './edge/pull-details.ts';
import { withSaid } from './edge/text-fields.ts';
import { findPull } from './find-named.ts';
import { momentOf } from './pull-moment.ts';
import type { PullHead } from './pull-views.ts';

/** The air of another pull holds for this long; after it a barometer and a cell have moved (common practice, no source). */
const AIR_HOLDS_H = 2;

/**
 * Details with those of another pull put in where nothing was said: combination, set-up, cell, operator, tune, places,
 * inertia, and the standard its figures carry. Never its name, time, notes, happenings, factor or treatment; its air only
 * when at most two hours lie between. `like`: `last` or a pull; missing: the details stay.
 */
export async function withLike(
  book: Book,
  details: PullDetails,
  like: string | undefined,
  now: string,
): Promise<Result<PullDetails>> {
  if (like === undefined) return accepted(details);
  const found = await pullToBeLike(book, like);
  if (!found.ok) return found;
  const before = found.value;
  const air = await airOf(book, before, details.recordedAt ?? now);
  const takesAir = details.weather === undefined && air.weather !== null;
  const asked = details.weather === undefined ? air.remarks : [];
  const { combinationId, cell, operator, tune, places, sweep } = before;
  const sameCombination = details.combinationId === undefined || details.combinationId === combinationId;
  const keepsSetUp = sameCombination && details.setUpWords === undefined;
  return accepted(
    {
      combinationId,
      cell,
      operator,
      carried: carriedOf(before),
      ...(keepsSetUp ? { setUpId: before.setUpId } : {}),
      ...(takesAir ? { weather: air.weather } : {}),
      ...details,
      tune: withSaid(tune, details.tune),
      places: withSaid(places, details.places),
      sweep: { ...sweep, ...details.sweep },
    },
    [likeRemark(before), ...asked],
  );
}

/** The pull that `last` or an id means. `last`: added last. */
export async function pullToBeLike(book: Book, like: string): Promise<Result<PullHead>> {
  const last = like === 'last' ? await book.newestPull() : null;
  return last ? accepted(last) : findPull(book, like);
}

/** The air of a pull, where it still holds at the time given; else why it does not. */
export async function airOf(
  book: Book,
  before: PullHead,
  at: string,
): Promise<{ weather: AirReading | null; remarks: Remark[] }> {
  if (before.weather === null) return { weather: null, remarks: [] };
  const then = await momentOf(book, before);
  const hours = then === null ? Number.NaN : Math.abs(Date.parse(at) - Date.parse(then)) / 3_600_000;
  if (hours <= AIR_HOLDS_H && /T\d/.test(at)) return { weather: before.weather, remarks: [] };
  const gap = Number.isNaN(hours) ? 'nobody knows when it was made' : `${hours.toFixed(0)} h lie between`;
  const message = `The air of ${before.name} is not taken: ${gap}, and it holds for ${AIR_HOLDS_H} h. Read pressure, temperature and humidity anew.`;
  return { weather: null, remarks: [remark('caution', 'air-too-old', message)] };
}

/** What the figures carry; the factor goes with the air of its moment and is not taken over. */
export function carriedOf({ carried }: PullHead): PullHead['carried'] {
  return carried.standard === 'observed' ? carried : { ...carried, factor: null };
}

const likeRemark = (before: PullHead): Remark =>
  remark(
    'note',
    'like-another',
    `What was not said is as in ${before.name}: combination, set-up, cell, operator, tune, places, inertia and the standard the figures carry.`,
  );
