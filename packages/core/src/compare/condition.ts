import { extentOf } from '../numeric/extent.ts';
import type { Pull, PullView } from '../pull/index.ts';
import { readsAlike, withoutUnit } from '../quantity/index.ts';
import { type Figure, joined, piecesOf, type Said, said } from '../remark/index.ts';
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
  text: (low: number, high: number) => Said;
  /** Whether two figures are further apart than the trade lets pass. */
  differ: (low: number, high: number) => boolean;
}

/** A condition told by a number: it differs when any two counted pulls are too far apart, repeats of one combination included. */
export function numberCondition(
  pulls: readonly CountedPull[],
  condition: NumberCondition,
): ConditionDifference {
  const { id, label, why, read, text, differ } = condition;
  const texts = new Map<string, Said>();
  for (const [key, ofKey] of byKey(pulls)) {
    const known = ofKey.map(read).filter((value) => value !== null && Number.isFinite(value));
    const [low, high] = extentOf(known as number[]);
    const range = text(low, high);
    texts.set(
      key,
      known.length === 0
        ? said`${NOT_NOTED}`
        : known.length < ofKey.length
          ? said`${range}, in part ${NOT_NOTED}`
          : range,
    );
  }
  const all = pulls.map(read);
  const [low, high] = extentOf(all.map((value) => value ?? Number.NaN));
  const missing = all.some((value) => value === null || !Number.isFinite(value));
  const state = differ(low, high) ? 'differs' : missing ? 'unknown' : 'alike';
  return { id, label, ...saidOf(texts), state, why };
}

interface TextCondition {
  id: string;
  label: string;
  why: string;
  /** What stands for the condition in a pull; `null` or empty: not noted. */
  read: (counted: CountedPull) => string | Said | null | undefined;
  /** As people read it, where that is not the text itself. */
  text?: (value: string) => string;
}

/**
 * A range: `300 to 320 rpm/s`, the unit once. Ends that read the same in one of the systems of units are one figure:
 * `300 rpm/s`.
 */
export const rangeText =
  (figure: (value: number) => Figure) =>
  (low: number, high: number): Said => {
    const [from, to] = [figure(low), figure(high)];
    if (readsAlike(from, to)) return said`${to}`;
    return said`${withoutUnit(from)} to ${to}`;
  };

/** A condition told in words: it differs when two counted pulls have other words, spaces and case forgiven. */
export function textCondition(pulls: readonly CountedPull[], condition: TextCondition): ConditionDifference {
  const { id, label, why, text = (value) => value } = condition;
  const read = (counted: CountedPull) => noted(condition.read(counted));
  const texts = new Map<string, Said>();
  for (const [key, ofKey] of byKey(pulls))
    texts.set(
      key,
      oneAfterAnother(
        ofKey
          .map(read)
          .map((value) => (value === null ? NOT_NOTED : typeof value === 'string' ? text(value) : value)),
      ),
    );
  const all = pulls.map(read);
  const known = new Set(all.flatMap((value) => (value === null ? [] : [plain(value)])));
  return {
    id,
    label,
    ...saidOf(texts),
    state: known.size > 1 ? 'differs' : all.includes(null) ? 'unknown' : 'alike',
    why,
  };
}

/** Plain texts by combination, and their pieces. */
function saidOf(texts: ReadonlyMap<string, Said>): Pick<ConditionDifference, 'values' | 'parts'> {
  const entries = [...texts];
  return {
    values: Object.fromEntries(entries.map(([key, { text }]) => [key, text])),
    parts: Object.fromEntries(
      entries.flatMap(([key, one]) => Object.values(piecesOf(one)).map((parts) => [key, parts])),
    ),
  };
}

/** Each once, parted by semicolons. */
function oneAfterAnother(texts: readonly (string | Said)[]): Said {
  const byText = new Map(texts.map((one) => [textOf(one), one]));
  return joined([...byText.values()], '; ');
}

function noted(value: string | Said | null | undefined): string | Said | null {
  if (typeof value === 'string') return value.trim() || null;
  return value ?? null;
}

const textOf = (one: string | Said): string => (typeof one === 'string' ? one : one.text);

/** Whether anything is noted of it at all. */
export const isNoted = (condition: ConditionDifference): boolean =>
  Object.values(condition.values).some((value) => value !== NOT_NOTED);

const plain = (one: string | Said): string => textOf(one).toLowerCase().replace(/\s+/gu, '');

function byKey(pulls: readonly CountedPull[]): Map<string, CountedPull[]> {
  const groups = new Map<string, CountedPull[]>();
  for (const counted of pulls) groups.set(counted.key, [...(groups.get(counted.key) ?? []), counted]);
  return groups;
}
