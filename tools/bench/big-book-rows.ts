import { openBook } from '@pullbook/store';
import {
  amendPull,
  figuresPageOf,
  matchOfTrial,
  type PullSearch,
  searchPulls,
  trialCards,
  trialPageOf,
} from '@pullbook/workshop';
import { makeBigBook } from './big-book.ts';

const US = { units: 'us', decimalMark: '.' } as const;
const PULLS = 10_000;

const SEARCHES: [string, PullSearch][] = [
  ['list the newest', {}],
  ['search by two words', { find: 'night belt' }],
  ['search with nothing found', { find: 'nothing is called so' }],
  [
    'filter by engine, cell, days, power, boost',
    { engine: 'engine-3', cell: 'North cell', fromDay: '2008-01-01', powerFrom: '250 hp', boosted: 'yes' },
  ],
  ['sort by power, page 100', { sort: 'power', page: 100 }],
];

/** Rows of the bench over a book of 10,000 pulls. `timed` gives a median, ms. */
export async function bigBookRows(
  folder: string,
  timed: (runs: number, work: () => unknown) => Promise<number>,
  add: (what: string, median: number, against: string, limit: number) => void,
): Promise<void> {
  const { trialId } = await makeBigBook(folder, PULLS);
  const book = await openBook(folder);
  for (const [what, search] of SEARCHES) {
    const ask = async () => {
      const found = await searchPulls(book, search, US);
      if (!found.ok) throw new Error(found.remarks[0]!.message);
    };
    add(`10,000 pulls: ${what}`, await timed(15, ask), 'limit', 50);
  }
  let round = 0;
  const amendAndList = async () => {
    round += 1;
    await amendPull(book, 'pull-9998', { operator: `shift ${round}` }, 'bench');
    await searchPulls(book, { find: `shift ${round}` }, US);
  };
  add('10,000 pulls: amend one and find it by the new word', await timed(9, amendAndList), 'limit', 100);
  await book.close();
  const fresh = async (work: (opened: typeof book) => Promise<unknown>) => {
    const opened = await openBook(folder);
    await work(opened);
    await opened.close();
  };
  add(
    '10,000 pulls: open the book and work out a trial page, nothing remembered',
    await timed(7, () => fresh((opened) => trialPageOf(opened, trialId, US))),
    'limit',
    300,
  );
  add(
    "10,000 pulls: open the book and work out the shop's figures, nothing remembered",
    await timed(7, () => fresh((opened) => figuresPageOf(opened, US))),
    'limit',
    200,
  );
  add(
    '10,000 pulls: open the book and work out the match of a trial, six of 50 boosted pulls fitted',
    await timed(5, () => fresh((opened) => matchOfTrial(opened, trialId))),
    'limit',
    1000,
  );
  const kept = await openBook(folder);
  add(
    '10,000 pulls: the same match once more',
    await timed(9, () => matchOfTrial(kept, trialId)),
    'limit',
    50,
  );
  let moved = 0;
  const windowMoved = () => {
    moved += 1;
    return trialPageOf(kept, trialId, US, { averagesWindowRpm: [3000 + 50 * moved, 6000] });
  };
  add('10,000 pulls: a trial page with its window moved', await timed(15, windowMoved), 'limit', 100);
  await kept.close();
  add(
    '10,000 pulls, 300 trials: open the book and work out the first page of cards, nothing remembered',
    await timed(3, () => fresh((opened) => trialCards(opened, US))),
    'limit',
    1000,
  );
}
