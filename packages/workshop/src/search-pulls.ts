import { displayUnit } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book, ListedPull, PullHead, PullQuery } from '@pullbook/store';
import { type PullRow, pullRow, type ViewOptions } from '@pullbook/views';
import { asOfToday } from './audience.ts';
import { type PullListing, pullListing } from './edge/pull-listing.ts';
import { quantityFromText } from './edge/quantity-text.ts';
import { findNamed } from './find-named.ts';
import { type ListedFigures, listedOf, listInBackground, listKey, listRecent } from './listed-pulls.ts';

/** Which pulls a person asks for, as text; missing: all. */
export interface PullSearch {
  /** Words that must all be there, parts of words too. */
  find?: string | undefined;
  /** Whole ids. */
  id?: string[] | undefined;
  /** Ids, beginnings of ids, or names; `none`: without a combination. */
  combination?: string[] | undefined;
  engine?: string | undefined;
  cell?: string | undefined;
  /** `2026-03-14`, both days included */
  fromDay?: string | undefined;
  toDay?: string | undefined;
  /** `300 hp`; without a unit as power is shown */
  powerFrom?: string | undefined;
  powerTo?: string | undefined;
  boosted?: 'yes' | 'no' | 'unknown' | undefined;
  outcome?: 'completed' | 'aborted' | undefined;
  inTrial?: boolean | undefined;
  invented?: boolean | undefined;
  sort?: PullQuery['sort'] | undefined;
  /** From 1. */
  page?: number | undefined;
  /** Rows a page; 50 unless said. */
  size?: number | undefined;
}

/** A page of a list. */
export interface ListPage<Row> {
  rows: Row[];
  /** How many fit, and how many there are at all. */
  total: number;
  all: number;
  /** From 1. */
  page: number;
  pages: number;
}

export interface PullListPage<Row> extends ListPage<Row> {
  /** Cells that pulls name. */
  cells: string[];
  /** Some pulls were not read for the list yet: until then their power, boost and words are not found. */
  stillReading: boolean;
}

export const PAGE_SIZE = 50;

/** A page of the pulls a person asks for, for a screen. */
export async function searchPulls(
  book: Book,
  search: PullSearch,
  options: ViewOptions,
): Promise<Result<PullListPage<PullRow>>> {
  const isUpToDate = await listRecent(book);
  return pageOfPulls(book, search, options, !isUpToDate, (head, { shown }, combination) =>
    pullRow({ pull: asOfToday(head), view: shown }, combination, options),
  );
}

/** The same with figures at the edge, as the files carry them. All pulls are read for the list first. */
export async function searchListings(
  book: Book,
  search: PullSearch,
  options: ViewOptions,
): Promise<Result<PullListPage<PullListing>>> {
  await listInBackground(book);
  return pageOfPulls(book, search, options, false, (head, { carried }, combination) =>
    pullListing(head, carried, combination?.name ?? null),
  );
}

async function pageOfPulls<Row>(
  book: Book,
  search: PullSearch,
  options: ViewOptions,
  stillReading: boolean,
  rowOf: (head: PullHead, figures: ListedFigures, combination: Named | null) => Row,
): Promise<Result<PullListPage<Row>>> {
  const query = await pullQueryFrom(book, search, options);
  if (!query.ok) return query;
  const found = await book.findPulls(query.value);
  const key = await listKey(book);
  const missing = found.pulls.filter(({ listed }) => listed?.key !== key).map(({ head }) => head.id);
  const fresh = new Map((await listedOf(book, missing, key)).map((one) => [one.pullId, one]));
  const figuresOf = (id: string, listed: ListedPull | null) =>
    (fresh.get(id) ?? listed)!.figures as ListedFigures;
  const names = new Map((await book.combinationNames()).map((one) => [one.id, one]));
  const { limit, offset } = query.value;
  return accepted({
    rows: found.pulls.map(({ head, listed }) =>
      rowOf(head, figuresOf(head.id, listed), names.get(head.combinationId ?? '') ?? null),
    ),
    total: found.total,
    all: found.all,
    page: offset / limit + 1,
    pages: Math.max(1, Math.ceil(found.total / limit)),
    cells: (await book.pullCells()).map(({ name }) => name),
    stillReading,
  });
}

type Named = { name: string };

/** What to ask the book for, from what a person wrote. */
async function pullQueryFrom(
  book: Book,
  search: PullSearch,
  options: ViewOptions,
): Promise<Result<PullQuery>> {
  const limit = search.size ?? PAGE_SIZE;
  const query: PullQuery = {
    sort: search.sort ?? 'newest',
    offset: ((search.page ?? 1) - 1) * limit,
    limit,
  };
  const remarks: Remark[] = [];
  const taken = <T>(result: Result<T>): T | undefined => {
    if (result.ok) return result.value;
    remarks.push(...result.remarks);
    return undefined;
  };
  const words = wordsIn(search.find);
  if (words.length > 0) query.words = words;
  if (search.id) query.ids = search.id;
  if (search.combination?.includes('none')) query.withoutCombination = true;
  const asked = search.combination?.filter((one) => one !== 'none') ?? [];
  if (asked.length > 0) {
    const found = await Promise.all(asked.map((one) => findNamed(book, ['combination'], one, 'combination')));
    query.combinationIds = found.flatMap((one) => taken(one)?.id ?? []);
  }
  if (search.engine) {
    const engine = taken(await findNamed(book, ['engine'], search.engine, 'engine'));
    if (engine) query.engineId = engine.id;
  }
  if (search.cell) query.cell = search.cell;
  if (search.fromDay) query.fromDay = taken(dayFrom(search.fromDay)) ?? '';
  if (search.toDay) query.toDay = taken(dayFrom(search.toDay)) ?? '';
  if (search.powerFrom) query.powerFrom = taken(powerFrom(search.powerFrom, options)) ?? 0;
  if (search.powerTo) query.powerTo = taken(powerFrom(search.powerTo, options)) ?? 0;
  if (search.boosted) query.boosted = search.boosted === 'unknown' ? 'unknown' : search.boosted === 'yes';
  if (search.outcome) query.outcome = search.outcome;
  if (search.inTrial !== undefined) query.inTrial = search.inTrial;
  if (search.invented !== undefined) query.invented = search.invented;
  const [first, ...others] = remarks;
  return first ? refused(first, ...others) : accepted(query);
}

/** Words to find, in lower case. */
export const wordsIn = (text: string | undefined): string[] =>
  (text ?? '').toLowerCase().split(/\s+/).filter(Boolean);

function dayFrom(text: string): Result<string> {
  if (/^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(Date.parse(text))) return accepted(text);
  return refused(
    remark('refusal', 'day-not-read', `"${text}" is not a day Pullbook reads. Accepted: 2026-03-14.`),
  );
}

/** `300 hp`, or `300` in the unit that power is shown in. */
function powerFrom(text: string, { units }: ViewOptions): Result<number> {
  const bare = /^\s*[\d.,]+\s*$/.test(text);
  return quantityFromText(
    bare ? `${text.trim()} ${displayUnit('power', units).name}` : text,
    'power',
    'Power',
  );
}
