import type { Carried, ImportDetails, SaidText, WeatherText, WrittenFields } from '../../api/edge.ts';
import { type MoreDetails, moreSaid, NO_MORE } from './more-details.ts';

/** What a person says of a file beside its columns, as typed. */
export interface FileDetails extends MoreDetails {
  name: string;
  /** '' none yet */
  combinationId: string;
  /** Which time of the combination on the brake, in words. */
  setUp: string;
  recordedAt: string;
  cell: string;
  pressure: string;
  temperature: string;
  humidity: string;
  altitude: string;
  standard: Carried['standard'];
  factor: string;
}

export const NO_DETAILS: FileDetails = {
  ...NO_MORE,
  name: '',
  combinationId: '',
  setUp: '',
  recordedAt: '',
  cell: '',
  pressure: '',
  temperature: '',
  humidity: '',
  altitude: '',
  standard: 'not stated',
  factor: '',
};

/** All but what is one pull's own, its name, time and what happened in it: what two pulls of a day have in common. */
export function sameAs(details: FileDetails, own: FileDetails): FileDetails {
  const { name, recordedAt, note, outcome, events } = own;
  return { ...details, name, recordedAt, note, outcome, events };
}

/** What a form starts with: as another pull, then as said of this kind of file, for the combination asked for. */
export function startingDetails({
  like,
  said,
  combinationId,
}: {
  like: WrittenFields | null;
  said?: SaidText | undefined;
  combinationId: string;
}): FileDetails {
  const { recordedAt: _, outcome: __, ...fields } = like ?? NO_FIELDS;
  const details: FileDetails = { ...NO_DETAILS, ...fields };
  if (combinationId !== '' && combinationId !== details.combinationId)
    Object.assign(details, { combinationId, setUp: '' });
  for (const [name, text] of Object.entries(said ?? {})) {
    const blank = name === 'standard' ? 'not stated' : '';
    if (text !== null && details[name as keyof SaidText] === blank) Object.assign(details, { [name]: text });
  }
  return details;
}

const NO_FIELDS: Partial<WrittenFields> = {};

/** The name of the n-th pull from this one on: `Pull 7`, 2 → `Pull 9`. */
export const nameAfter = (name: string, further: number): string =>
  name.replace(/\d+$/, (number) => String(Number(number) + further));

/** This minute as a field for a time has it. */
export function thisMinute(now: Date): string {
  const two = (number: number) => String(number).padStart(2, '0');
  const day = [now.getFullYear(), two(now.getMonth() + 1), two(now.getDate())].join('-');
  return `${day}T${two(now.getHours())}:${two(now.getMinutes())}`;
}

export function weatherOf(details: FileDetails): WeatherText | null {
  const { pressure, temperature, humidity, altitude } = details;
  if ([pressure, temperature, humidity, altitude].every((text) => text.trim() === '')) return null;
  return {
    pressure: pressure.trim(),
    temperature: temperature.trim(),
    humidity: humidity.trim() || null,
    altitude: altitude.trim() || null,
  };
}

/** What the figures carry, as the person said it. */
export function carriedOf({ standard, factor }: FileDetails): Carried {
  if (standard === 'observed') return { standard, factor: 1 };
  if (standard === 'not stated' || standard === 'unknown') return { standard, factor: null };
  const number = Number(factor.trim().replace(',', '.'));
  return { standard, factor: factor.trim() !== '' && Number.isFinite(number) ? number : null };
}

/** The details as they are sent with the file; what was left blank is not said. */
export function importDetails(details: FileDetails, mapping: ImportDetails['mapping']): ImportDetails {
  const said = (text: string) => text.trim();
  return {
    mapping,
    ...(said(details.name) === '' ? {} : { name: said(details.name) }),
    ...(said(details.setUp) === '' ? {} : { setUp: said(details.setUp) }),
    ...(said(details.cell) === '' ? {} : { cell: said(details.cell) }),
    ...(said(details.recordedAt) === '' ? {} : { recordedAt: instantOf(said(details.recordedAt)) }),
    combinationId: details.combinationId === '' ? null : details.combinationId,
    weather: weatherOf(details),
    carried: carriedOf(details),
    ...moreSaid(details),
  };
}

/** A time as the field gives it, with this machine's offset from world time on that day. */
export function instantOf(local: string): string {
  const offset = -new Date(local).getTimezoneOffset();
  if (Number.isNaN(offset)) return local;
  const two = (number: number) => String(Math.trunc(Math.abs(number))).padStart(2, '0');
  const seconds = local.length === 16 ? ':00' : '';
  return `${local}${seconds}${offset < 0 ? '-' : '+'}${two(offset / 60)}:${two(offset % 60)}`;
}
