import { coolerRemarks, solveMatch } from '@pullbook/core/airpath';
import { type Combination, isSupercharged } from '@pullbook/core/combination';
import { accepted, type Remark, type Result, remark } from '@pullbook/core/remark';
import { findingsOfMatch, type RuleThresholds, type Silenced, withSilenced } from '@pullbook/core/rule';
import type { Trial } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import type { MatchBundle, MatchedCombination } from '@pullbook/views/match';
import { findCombination, findTrial } from '../find-named.ts';
import { remembered } from '../remembered.ts';
import { settingsOf } from '../settings.ts';
import { shopReadingOf } from '../shop-reading.ts';
import { type EngineAtHand, engineAtHand } from './engine-at-hand.ts';
import { suppliedBy } from './fuels-of-match.ts';
import { type MatchAmong, type MatchChoices, matchOfEngine } from './match-of-engine.ts';
import { measuredMeans } from './measured-means.ts';
import { scaledAlone } from './scaled-alone.ts';

export type { MatchChoices } from './match-of-engine.ts';

/** Supercharger matches of a trial's combinations, with all that the page needs to try something on them. */
export async function matchOfTrial(
  book: Book,
  id: string,
  choices: MatchChoices = {},
): Promise<Result<MatchBundle>> {
  const found = await findTrial(book, id);
  if (!found.ok) return found;
  const trial = found.value;
  const wanted: Wanted[] = [];
  for (const { key, combinationId, shortName } of trial.combinations) {
    const combination = await book.combination(combinationId);
    if (combination !== null) wanted.push({ key, name: shortName || combination.name, combination });
  }
  return accepted(await bundleOf(book, wanted, { trial, title: trial.question, choices }));
}

/** The supercharger match of one combination, from all pulls of its engine that count. */
export async function matchOfCombination(
  book: Book,
  id: string,
  choices: MatchChoices = {},
): Promise<Result<MatchBundle>> {
  const found = await findCombination(book, id);
  if (!found.ok) return found;
  const combination = found.value;
  const wanted = [{ key: 'A', name: combination.name, combination }];
  return accepted(await bundleOf(book, wanted, { trial: null, title: combination.name, choices }));
}

interface Wanted {
  key: string;
  name: string;
  combination: Combination;
}

interface About {
  trial: Trial | null;
  title: string;
  choices: MatchChoices;
}

async function bundleOf(
  book: Book,
  wanted: readonly Wanted[],
  { trial, title, choices }: About,
): Promise<MatchBundle> {
  const engines = new Map<string, EngineAtHand>();
  for (const { engineId } of wanted.map((one) => one.combination))
    if (!engines.has(engineId)) engines.set(engineId, await engineAtHand(book, engineId, trial));
  const { ruleThresholds } = await settingsOf(book);
  const silenced = await book.silenced([
    ...wanted.map(({ combination }) => `combination ${combination.id}`),
    ...[...engines.values()].flatMap(({ pulls }) => [...pulls.values()].flat().map(({ id }) => `pull ${id}`)),
  ]);
  const rests = [
    'match',
    trial,
    title,
    choices,
    wanted,
    [...engines.values()].map(({ combinations, pulls }) => [combinations, [...pulls]]),
    await book.compressorMaps(),
    await shopReadingOf(book),
    ruleThresholds,
    silenced,
  ];
  return remembered(book, JSON.stringify(rests), async () => {
    const combinations: MatchedCombination[] = [];
    const left: MatchBundle['left'] = [];
    for (const [place, one] of wanted.entries()) {
      const alone = await scaledAlone(book, one.combination, engines.get(one.combination.engineId)!);
      if (alone !== null) {
        left.push({ key: one.key, name: one.name, ...alone });
        continue;
      }
      const matched = await matchedOf(book, one, {
        place,
        engine: engines.get(one.combination.engineId)!,
        compared: wanted.flatMap(({ combination }) =>
          combination.engineId === one.combination.engineId ? [combination] : [],
        ),
        choices,
        ruleThresholds,
        silenced,
      });
      if (matched.ok) combinations.push(matched.value);
      else left.push({ key: one.key, name: one.name, reason: matched.remarks[0]! });
    }
    return {
      trialId: trial?.id ?? null,
      title,
      silent: combinations.length === 0 ? silentFor(left.map(({ reason }) => reason)) : [],
      combinations,
      left,
      remarks: [],
    };
  });
}

interface Around extends MatchAmong {
  place: number;
  ruleThresholds: RuleThresholds;
  silenced: readonly Silenced[];
}

async function matchedOf(
  book: Book,
  { key, name, combination }: Wanted,
  { place, ruleThresholds, silenced, ...among }: Around,
): Promise<Result<MatchedCombination>> {
  if (!isSupercharged(combination.sheet)) return { ok: false, remarks: [NOT_SUPERCHARGED] };
  const made = await matchOfEngine(book, combination, among);
  if (!made.ok) return made;
  const { ready, fit, madeOf, pulls } = made.value;
  const curve = solveMatch(ready.input);
  const findings = findingsOfMatch(`combination ${combination.id}`, ready.input, curve, {
    fit,
    thresholds: ruleThresholds,
  });
  return accepted({
    key,
    combinationId: combination.id,
    name,
    combination: place,
    input: ready.input,
    spread: ready.spread,
    fit,
    measured: measuredMeans(pulls),
    supply: suppliedBy(combination.sheet, madeOf),
    assumptions: once([...ready.assumptions, ...coolerRemarks(ready.input, curve)]),
    findings: withSilenced(findings, silenced),
  });
}

/** The same thing may be assumed on two ways, for the baseline and for the match. */
const once = (remarks: readonly Remark[]): Remark[] =>
  remarks.filter((one, place) => remarks.findIndex((other) => other.message === one.message) === place);

/** Why nothing at all is matched, said once: what the supercharged ones lack, else that none is supercharged. */
function silentFor(reasons: readonly Remark[]): Remark[] {
  const lacking = reasons.find(({ code }) => code !== NOT_SUPERCHARGED.code);
  if (lacking !== undefined) return [lacking];
  return reasons.length === 1 ? [...reasons] : [NONE_SUPERCHARGED];
}

const NONE_SUPERCHARGED: Remark = remark(
  'note',
  'none-supercharged',
  'None of these combinations has a supercharger, so there is nothing to match.',
);

const NOT_SUPERCHARGED: Remark = remark(
  'note',
  'not-supercharged',
  'It has no supercharger, so there is nothing to match.',
);
