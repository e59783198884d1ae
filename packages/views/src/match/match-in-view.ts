import {
  type FigureBand,
  type MatchCase,
  type MatchCurve,
  type MatchFigure,
  solveMatch,
} from '@pullbook/core/airpath';
import { findingsOfMatch } from '@pullbook/core/rule';
import type { MatchBundle, MatchedCombination, MatchPageInput, PageBands, WhatIf } from '../match-model.ts';
import type { ViewOptions } from '../model.ts';
import { type Showing, showingIn } from '../showing.ts';
import { whatIfCase } from './what-if-case.ts';
import { whatIfWords } from './what-if-words.ts';

type Bands = Record<MatchFigure, FigureBand>;

/** A combination with its match solved, and its bands where they have come. */
export interface MatchedInView {
  combination: MatchedCombination;
  curve: MatchCurve;
  bands: Bands | null;
  /** Against the reference; `null`: it is the reference, or the bands have not come. */
  difference: Bands | null;
}

/** A page's match: everything solved once, and what is compared with what. */
export interface MatchInView {
  bundle: MatchBundle;
  whatIf: WhatIf | null;
  show: Showing;
  options: ViewOptions;
  /** The reference first. */
  matched: MatchedInView[];
  /** What the others are held against; `null`: nothing can be matched. */
  reference: MatchedInView | null;
  /** What is tried, else the next of the trial; `null`: there is one only. */
  compared: MatchedInView | null;
}

/**
 * The combinations in the order of a page: what the others are held against, what is tried on it, the rest. Bands are
 * asked for in this order, so that their differences are those of the page.
 */
export function combinationsInOrder(bundle: MatchBundle, whatIf: WhatIf | null): MatchedCombination[] {
  const tried = whatIf === null ? null : whatIfCase(bundle, whatIf);
  if (tried === null) return bundle.combinations;
  const original = bundle.combinations.filter(({ key }) => key === whatIf?.key);
  const others = bundle.combinations.filter(({ key }) => key !== whatIf?.key);
  return [...original, tried, ...others];
}

/** What bands are asked for of a page. */
export function bandCases(bundle: MatchBundle, whatIf: WhatIf | null): MatchCase[] {
  return combinationsInOrder(bundle, whatIf).map(({ input, spread }) => ({ input, spread }));
}

/** Bands of other cases (of an earlier what-if) do not fit and are left out. */
const fitting = (bands: PageBands | null, cases: number): PageBands | null =>
  bands?.cases.length === cases ? bands : null;

export function matchInView({ bundle, whatIf, bands }: MatchPageInput, options: ViewOptions): MatchInView {
  const show = showingIn(options);
  const combinations = combinationsInOrder(bundle, whatIf);
  const own = fitting(bands, combinations.length);
  const isTried = combinations.length > bundle.combinations.length;
  const matched = combinations.map((combination, index): MatchedInView => {
    const curve = solveMatch(combination.input);
    const shown =
      isTried && index === 1 && whatIf !== null
        ? triedInWords(combination, curve, whatIfWords(show, whatIf))
        : combination;
    return {
      combination: shown,
      curve,
      bands: own?.cases[index] ?? null,
      difference: index === 0 ? null : (own?.differences[index] ?? null),
    };
  });
  return {
    bundle,
    whatIf,
    show,
    options,
    matched,
    reference: matched[0] ?? null,
    compared: matched[1] ?? null,
  };
}

/** What is tried, by what is tried of it, and with what the rules say of that: nobody can have silenced it. */
function triedInWords(combination: MatchedCombination, curve: MatchCurve, name: string): MatchedCombination {
  return { ...combination, name, findings: findingsOfMatch(TRIED_SUBJECT, combination.input, curve) };
}

/** What the findings of a what-if are about: no thing of the book, so nothing by which they could be silenced. */
export const TRIED_SUBJECT = 'tried';

/** A figure at an engine speed that is a node of this match; NaN where it is none. */
export function figureAt({ curve }: MatchedInView, figure: MatchFigure, engineSpeedRpm: number): number {
  const node = nodeOf(curve, engineSpeedRpm);
  return node < 0 ? Number.NaN : curve.figures[figure][node]!;
}

/** Low and high of a band at a node; `null`: no band there. */
export function bandAt(
  { curve }: MatchedInView,
  bands: Bands | null,
  figure: MatchFigure,
  engineSpeedRpm: number,
): [low: number, high: number] | null {
  const node = nodeOf(curve, engineSpeedRpm);
  const band = bands?.[figure];
  const range: [number, number] = [band?.low[node] ?? Number.NaN, band?.high[node] ?? Number.NaN];
  return range.every(Number.isFinite) ? range : null;
}

const nodeOf = ({ engineSpeedRpm }: MatchCurve, rpm: number): number => engineSpeedRpm.indexOf(rpm);

/** Engine speeds that both have a solution at, ascending. */
export function commonSpeeds(one: MatchedInView, other: MatchedInView): number[] {
  return one.curve.engineSpeedRpm.filter(
    (rpm) =>
      Number.isFinite(figureAt(one, 'brakePower', rpm)) &&
      Number.isFinite(figureAt(other, 'brakePower', rpm)),
  );
}

/** Speeds that people name; on others a difference is rather the noise of one node. */
const NAMED_STEP_RPM = 500;

/** The engine speed that is spoken of: the whole 500 at which power differs most; of one combination alone, where it is highest. */
export function toldSpeed({ reference, compared }: MatchInView): number | null {
  if (reference === null) return null;
  const common = commonSpeeds(reference, compared ?? reference);
  const named = compared === null ? [] : common.filter((rpm) => rpm % NAMED_STEP_RPM === 0);
  const speeds = named.length > 0 ? named : common;
  const sizeAt = (rpm: number) => {
    const own = figureAt(reference, 'brakePower', rpm);
    return compared === null ? own : Math.abs(figureAt(compared, 'brakePower', rpm) - own);
  };
  return speeds.reduce<number | null>(
    (best, rpm) => (best === null || sizeAt(rpm) >= sizeAt(best) ? rpm : best),
    null,
  );
}
