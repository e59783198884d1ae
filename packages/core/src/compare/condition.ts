import { extentOf } from '../numeric/extent.ts';
import type { Pull, PullView } from '../pull/index.ts';
import type { ComparedInput, ConditionDifference } from './model.ts';

/** A counted pull and the combination it stands for. */
export interface CountedPull {
  key: string;
  pull: Pull;
  view: PullView;
}

/** The pulls of all combinations in one list. */
export const countedPulls = (inputs: readonly ComparedInput[]): CountedPull[] =>
  inputs.flatMap(({ key, pulls }) => pulls.map(({ pull, view }) => ({ key, pull, view })));

const NOT_NOTED = 'not noted';

interface NumberCondition {
  id: string;
  label: string;
  why: string;
  read: (counted: CountedPull) => number | null;
  /** Lowest and highest figure of a combination's pulls as people read them. */
  text: (low: number, high: number) => string;
  /** Whether two figures are further apart than the trade lets pass. */
  differ: (low: number, high: number) => boolean;
}

/** A condition told by a number: it differs when any two counted pulls are too far apart, repeats of one combination included. */
export function numberCondition(
  pulls: readonly CountedPull[],
  condition: NumberCondition,
): ConditionDifference {
  const { id, label, why, read, text, differ } = condition;
  const values: Record<string, string> = {};
  for (const [key, ofKey] of byKey(pulls)) {
    const known = ofKey.map(read).filter((value) => value !== null && Number.isFinite(value));
    const [low, high] = extentOf(known as number[]);
    const range = text(low, high);
    values[key] =
      known.length === 0 ? NOT_NOTED : known.length < ofKey.length ? `${range}, in part ${NOT_NOTED}` : range;
  }
  const all = pulls.map(read);
  const [low, high] = extentOf(all.map((value) => value ?? Number.NaN));
  const missing = all.some((value) => value === null || !Number.isFinite(value));
  return { id, label, values, state: differ(low, high) ? 'differs' : missing ? 'unknown' : 'alike', why };
}

interface TextCondition {
  id: string;
  label: string;
  why: string;
  /** What stands for the condition in a pull; `null` or empty: not noted. */
  read: (counted: CountedPull) => string | null | undefined;
  /** As people read it, where that is not the text itself. */
  text?: (value: string) => string;
}

/** A range whose ends are written alike: `300 rpm/s`, or `300 to 320 rpm/s` with the unit once. */
export const rangeText =
  (figure: (value: number) => string, unit = '') =>
  (low: number, high: number): string => {
    const [from, to] = [figure(low), figure(high)];
    return `${from === to ? from : `${from} to ${to}`}${unit === '' ? '' : ` ${unit}`}`;
  };

/** A condition told in words: it differs when two counted pulls have other words, spaces and case forgiven. */
export function textCondition(pulls: readonly CountedPull[], condition: TextCondition): ConditionDifference {
  const { id, label, why, text = (value) => value } = condition;
  const read = (counted: CountedPull) => condition.read(counted)?.trim() || null;
  const values: Record<string, string> = {};
  for (const [key, ofKey] of byKey(pulls))
    values[key] = [
      ...new Set(ofKey.map(read).map((value) => (value === null ? NOT_NOTED : text(value)))),
    ].join('; ');
  const all = pulls.map(read);
  const known = new Set(all.flatMap((value) => (value === null ? [] : [plain(value)])));
  return {
    id,
    label,
    values,
    state: known.size > 1 ? 'differs' : all.includes(null) ? 'unknown' : 'alike',
    why,
  };
}

/** Whether anything is noted of it at all. */
export const isNoted = (condition: ConditionDifference): boolean =>
  Object.values(condition.values).some((value) => value !== NOT_NOTED);

const plain = (text: string): string => text.toLowerCase().replace(/\s+/gu, '');

function byKey(pulls: readonly CountedPull[]): Map<string, CountedPull[]> {
  const groups = new Map<string, CountedPull[]>();
  for (const counted of pulls) groups.set(counted.key, [...(groups.get(counted.key) ?? []), counted]);
  return groups;
}
