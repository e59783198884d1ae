import type { ChartDescription } from '@pullbook/charts';
import type { Spread } from '@pullbook/core/scatter';
import type { InductionClass, Repeatability, SessionDrift, ShopFigures } from '@pullbook/core/shop';
import { dayText } from './date.ts';
import type { ShownTable, ViewOptions } from './model.ts';
import { repeatabilityChart } from './repeatability-chart.ts';
import { type Showing, showingIn } from './showing.ts';

/** What the shop's pulls say about its own scatter, ready to show. */
export interface ShopFiguresPage {
  /** One sentence: what a pull of this shop is good for. */
  sentence: string;
  /** Over the months; `null`: no repeats yet. */
  chart: ChartDescription | null;
  repeatability: ShownTable | null;
  spreads: ShownTable;
  sessions: ShownTable | null;
  cellOffsets: ShownTable | null;
  /** Sessions whose last pulls stand more than 1 % from their first. */
  moved: string[];
}

export const INDUCTION_NAMES: Readonly<Record<InductionClass, string>> = {
  injected: 'Injected',
  carburetted: 'Carburetted',
  supercharged: 'Supercharged',
};

/** A session that moved further is named (common practice, no source). */
const MOVED = 0.01;

/** Sessions listed; the older ones are in the JSON. */
const MOST_SESSIONS = 20;

const column = (text: string) => ({ text, combination: null });

export function shopFiguresPage(figures: ShopFigures, options: ViewOptions): ShopFiguresPage {
  const show = showingIn(options);
  return {
    sentence: sentenceOf(figures.repeatability, show),
    chart: repeatabilityChart(figures.repeatability, options),
    repeatability: repeatabilityTable(figures.repeatability, show),
    spreads: spreadsTable(figures, show),
    sessions: sessionsTable(figures.drift.sessions, show),
    cellOffsets: offsetsTable(figures.cellOffsets, show),
    moved: figures.drift.sessions
      .filter(({ sentinel }) => sentinel !== null && Math.abs(sentinel) > MOVED)
      .slice(0, MOST_SESSIONS)
      .map(
        ({ day, cell, sentinel }) =>
          `${sessionName(day, cell)}: the last pulls of a combination stand ${share(show, Math.abs(sentinel!))} ${sentinel! < 0 ? 'below' : 'above'} its first.`,
      ),
  };
}

/** What a spread rests on, in words: what was seen moves the guess, and goes before it once it weighs as much. */
const restsOn = ({ from }: Spread, seen: number): string => {
  const mostly = seen > 0 ? 'mostly ' : '';
  if (from === 'shop') return 'mostly the shop’s pulls';
  return from === 'setting' ? `${mostly}said by the shop` : `${mostly}built in`;
};

/** `Injected, Cell 1` */
export const kindName = ({ induction, cell }: Pick<Repeatability, 'induction' | 'cell'>): string =>
  `${INDUCTION_NAMES[induction]}, ${cell ?? 'no cell noted'}`;

const share = (show: Showing, sigma: number): string => show.perCent(sigma, { decimals: 2 });
const whole = (show: Showing, value: number): string => show.number(value, 'ratio', { decimals: 0 });

function sentenceOf(repeatability: readonly Repeatability[], show: Showing): string {
  const known = repeatability.filter(({ clusters }) => clusters > 0);
  const [most] = known.toSorted((one, other) => other.clusters - one.clusters);
  if (!most) {
    return 'No pull was repeated yet in one set-up on one day of an engine whose sheet says how it is fed (fuel system, type): bands rest on what is built in, or on what the shop said.';
  }
  const setUps = `${most.clusters} set-up${most.clusters === 1 ? '' : 's'} repeated so far`;
  return `Two pulls of one set-up differ by up to ${share(show, most.twoPullsDiffer)} in 95 of 100 cases (${INDUCTION_NAMES[most.induction].toLowerCase()}, ${most.cell ?? 'no cell noted'}; ${setUps}).`;
}

function repeatabilityTable(all: readonly Repeatability[], show: Showing): ShownTable | null {
  if (all.length === 0) return null;
  return {
    id: 'repeatability',
    title: 'How far one pull lies from the next, same set-up and day',
    columns: ['One standard deviation', 'Degrees of freedom', 'Set-ups repeated', 'Pulls', 'Rests on'].map(
      column,
    ),
    rows: all.map((one) => ({
      name: kindName(one),
      unit: '',
      cells: [
        share(show, one.spread.sigma),
        whole(show, one.spread.degreesOfFreedom),
        whole(show, one.clusters),
        whole(show, one.pulls),
        restsOn(one.spread, one.clusters),
      ],
    })),
  };
}

const RETURNS = { one: 'return', many: 'returns' };

function spreadsTable({ setUp, day, cell, drift }: ShopFigures, show: Showing): ShownTable {
  const told = drift.sessions.filter(({ perHour }) => perHour !== null).length;
  const row = (name: string, spread: Spread, seen: number, of: { one: string; many: string }) => ({
    name,
    unit: '',
    cells: [
      share(show, spread.sigma),
      whole(show, spread.degreesOfFreedom),
      `${whole(show, seen)} ${seen === 1 ? of.one : of.many}`,
      restsOn(spread, seen),
    ],
  });
  return {
    id: 'spreads',
    title: 'What else scatters',
    columns: ['One standard deviation', 'Degrees of freedom', 'Seen', 'Rests on'].map(column),
    rows: [
      row('Another set-up, the same day', setUp.spread, setUp.returns, RETURNS),
      row('Another day, besides', day.spread, day.returns, RETURNS),
      row('Another cell', cell.spread, cell.pairs, { one: 'pair of cells', many: 'pairs of cells' }),
      row('Drift in an hour', drift.spread, told, { one: 'session', many: 'sessions' }),
    ],
  };
}

const sessionName = (day: string, cell: string | null): string =>
  [dayText(day), cell].filter(Boolean).join(', ');

function sessionsTable(sessions: readonly SessionDrift[], show: Showing): ShownTable | null {
  const told = sessions.filter(({ perHour, sentinel }) => perHour !== null || sentinel !== null);
  if (told.length === 0) return null;
  const signed = (value: number | null): string =>
    value === null ? '' : show.perCent(value, { sign: true, decimals: 2 });
  return {
    id: 'sessions',
    title: 'How sessions moved',
    columns: ['Drift in an hour', 'Last against first', 'Pulls'].map(column),
    rows: told.slice(0, MOST_SESSIONS).map(({ day, cell, perHour, perHourSpread, sentinel, pulls }) => ({
      name: sessionName(day, cell),
      unit: '',
      cells: [
        perHour === null ? '' : `${signed(perHour)} ± ${share(show, perHourSpread ?? 0)}`,
        signed(sentinel),
        String(pulls),
      ],
    })),
  };
}

function offsetsTable(offsets: ShopFigures['cellOffsets'], show: Showing): ShownTable | null {
  if (offsets.length === 0) return null;
  const signed = (value: number): string => show.perCent(value, { sign: true, decimals: 1 });
  return {
    id: 'cellOffsets',
    title: 'Cell against cell, same engine and combination',
    columns: ['Reads', '95 % band', 'Engines'].map(column),
    rows: offsets.map(({ from, to, ratio, low, high, engines }) => ({
      name: `${to} against ${from}`,
      unit: '',
      cells: [signed(ratio), `${signed(low)} to ${signed(high)}`, String(engines)],
    })),
  };
}
