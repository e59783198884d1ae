import { type MatchCase, solveMatch } from '@pullbook/core/airpath';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import {
  type MatchBundle,
  type MatchedCombination,
  type WhatIfText,
  whatIfCase,
  whatIfFromText,
} from '@pullbook/views/match';
import { baselinePoints } from '../edge/baseline-points.ts';
import { MATCH_CAUTIONS, type MatchedReport, type MatchReport, matchedReport } from '../edge/match-report.ts';
import { edgeRemarks } from '../edge/remark.ts';
import { findTrial } from '../find-named.ts';
import { type BandsAsked, bandsOfMatch, USUAL_DRAWS, USUAL_SEED } from './bands-of-match.ts';
import { type MatchChoices, matchOfCombination, matchOfTrial } from './match-bundle.ts';

export interface MatchAsked extends Pick<MatchChoices, 'air'> {
  /** Of a trial: fit to the pulls of these keys alone, to see the others foretold by them. Missing: to whatever was pulled. */
  fitOn?: readonly string[] | undefined;
  /** Something tried on one of the combinations, as text with units. */
  whatIf?: WhatIfText | undefined;
  /** `null`: the curves alone. */
  bands: BandsAsked | null;
  /** Units of sentences for a person; `null`: SI. */
  words: ViewOptions | null;
}

/** The matches of a trial or of one combination of the book as they leave the program. */
export async function matchReportOf(
  book: Book,
  of: { trial: string } | { combination: string },
  { whatIf = {}, bands, words, air, fitOn }: MatchAsked,
): Promise<Result<MatchReport>> {
  const ids = await idsOfKeys(book, of, fitOn);
  if (!ids.ok) return ids;
  const choices = { air, fitOn: ids.value };
  const found =
    'trial' in of
      ? await matchOfTrial(book, of.trial, choices)
      : await matchOfCombination(book, of.combination, choices);
  if (!found.ok) return found;
  const bundle = found.value;
  const tried = triedIn(bundle, whatIf);
  if (!tried.ok) return tried;
  const matches = await matchedReports(bundle.combinations, tried.value, bands, words);
  return accepted({
    schemaVersion: 1,
    trialId: bundle.trialId,
    title: bundle.title,
    draws: bands && (bands.draws ?? USUAL_DRAWS),
    seed: bands && (bands.seed ?? USUAL_SEED),
    matches,
    left: bundle.left.map(({ key, name, reason, scaled }) => ({
      key,
      name,
      reason: edgeRemarks([reason], null, words)[0]!,
      scaledBaseline: scaled === undefined ? null : baselinePoints(scaled.baseline, scaled.power),
    })),
    remarks: edgeRemarks(bundle.remarks, null, words),
    cautions: [...MATCH_CAUTIONS],
  });
}

/** The combinations of a trial by their keys. */
async function idsOfKeys(
  book: Book,
  of: { trial: string } | { combination: string },
  keys: readonly string[] | undefined,
): Promise<Result<string[] | undefined>> {
  if (keys === undefined) return accepted(undefined);
  if (!('trial' in of)) return refused(FIT_ON_OF_TRIAL);
  const trial = await findTrial(book, of.trial);
  if (!trial.ok) return trial;
  const { combinations } = trial.value;
  const strange = keys.find((key) => combinations.every((one) => one.key !== key));
  if (strange !== undefined)
    return refused(
      remark(
        'refusal',
        'unknown-key',
        `The trial has no combination ${strange}. There are: ${combinations.map(({ key }) => key).join(', ')}.`,
      ),
    );
  return accepted(combinations.flatMap((one) => (keys.includes(one.key) ? [one.combinationId] : [])));
}

const FIT_ON_OF_TRIAL = remark(
  'refusal',
  'fit-on-without-trial',
  'Keys such as A or B are those of a trial. Give --trial with --fit-on.',
);

/** Something tried, with the combination it is tried on. */
export interface Tried {
  original: MatchedCombination;
  changed: MatchedCombination;
}

/** Matches with their bands, those tried after the others and each held against its original. */
export async function matchedReports(
  combinations: readonly MatchedCombination[],
  tried: readonly Tried[],
  bands: BandsAsked | null,
  words: ViewOptions | null,
): Promise<MatchedReport[]> {
  const reportOf = (one: MatchedCombination, banded: Banded | null, from: string | null) => {
    const { key, name, combinationId, input, measured, fit, findings, assumptions } = one;
    const difference = banded?.difference;
    return matchedReport(
      {
        key,
        name,
        combinationId: combinationId === '' ? null : combinationId,
        input,
        curve: solveMatch(input),
        bands: banded?.own ?? null,
        difference: difference && from !== null ? { from, bands: difference } : null,
        measured,
        fit,
        findings,
        assumptions,
      },
      words,
    );
  };
  const banded = await bandedEach(combinations, bands);
  const reports = combinations.map((one, place) =>
    reportOf(one, banded[place] ?? null, place === 0 ? null : combinations[0]!.key),
  );
  for (const { original, changed } of tried) {
    const [, own] = await bandedEach([original, changed], bands);
    reports.push(reportOf(changed, own ?? null, original.key));
  }
  return reports;
}

type Bands = Awaited<ReturnType<typeof bandsOfMatch>>['cases'][number];

interface Banded {
  own: Bands;
  difference: Bands | null;
}

async function bandedEach(cases: readonly MatchCase[], bands: BandsAsked | null): Promise<Banded[]> {
  if (bands === null || cases.length === 0) return [];
  const made = await bandsOfMatch(cases, bands);
  return made.cases.map((own, place) => ({ own, difference: made.differences[place] ?? null }));
}

function triedIn(bundle: MatchBundle, text: WhatIfText): Result<Tried[]> {
  const strange = Object.keys(text).find((name) => !WHAT_IF_NAMES.includes(name as keyof WhatIfText));
  if (strange !== undefined)
    return refused(
      remark(
        'refusal',
        'what-if-not-known',
        `"${strange}" is nothing that can be tried. Known: ${WHAT_IF_NAMES.filter((name) => name !== 'on').join(', ')}.`,
      ),
    );
  const key = text.on;
  if (key !== undefined && bundle.combinations.every((one) => one.key !== key))
    return refused(
      remark(
        'refusal',
        'unknown-key',
        `There is no match of ${key}. Matched: ${bundle.combinations.map((one) => one.key).join(', ') || 'none'}.`,
      ),
    );
  const read = whatIfFromText(text, bundle);
  if (!read.ok) return read;
  if (read.value === null) return accepted([]);
  const { key: on } = read.value;
  const original = bundle.combinations.find((one) => one.key === on);
  const changed = whatIfCase(bundle, read.value);
  return accepted(original && changed ? [{ original, changed }] : []);
}

/** As in `WhatIfText`. */
const WHAT_IF_NAMES = [
  'on',
  'blowerPulleyDiameter',
  'crankPulleyDiameter',
  'stepUp',
  'cooler',
  'coolerEffectiveness',
  'coolantTemperature',
  'altitude',
  'airPressure',
  'airTemperature',
  'moreWork',
  'fuel',
  'evaporationCooling',
  'moreAir',
  'moreAirFrom',
  'moreAirTo',
] as const satisfies readonly (keyof WhatIfText)[];
