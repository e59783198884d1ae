import { CORRECTIONS } from '@pullbook/core/air';
import { type Baseline, commonSpeeds, type MatchCase, readAt, type ViewedPull } from '@pullbook/core/airpath';
import { type Combination, isSupercharged } from '@pullbook/core/combination';
import { fuelSupplyOf, inductionOfSheet } from '@pullbook/core/fuel';
import { mean } from '@pullbook/core/numeric';
import {
  powerByDisplacementRemark,
  type ReachInput,
  troubleOfTarget,
  USUAL_COSTS,
} from '@pullbook/core/reach';
import { accepted, type Remark, type Result, refused } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { NamedSource, ReachBundle } from '@pullbook/views/reach';
import { askedOf, type ReachRequest, readReachRequest } from '../edge/reach-request.ts';

import { findCombination } from '../find-named.ts';
import { baselineFor } from '../match/baseline-for.ts';
import { type EngineAtHand, engineAtHand } from '../match/engine-at-hand.ts';
import { type Matched, matchOfEngine } from '../match/match-of-engine.ts';
import { viewedPulls } from '../match/viewed-pulls.ts';
import { remembered } from '../remembered.ts';
import { settingsOf } from '../settings.ts';
import { breathingOfPairs } from './breathing-of-pairs.ts';
import { buildsOf } from './builds.ts';
import { figureOfPulls, nearCandidates } from './near-candidates.ts';
import { partsListOf } from './parts-list.ts';
import { aLittleMore, MOST_RUNGS } from './target-of-search.ts';
import { thingsToChange } from './things-to-change.ts';

export type { ReachRequest } from '../edge/reach-request.ts';

/**
 * All that a search from a target needs of a combination of the book: its match and fit, the engine without supercharger, other superchargers,
 * what the parts list has, what measured pairs say of breathing, and the nearest pulls. Refused where nothing says how the engine runs
 * without the supercharger, with the pull to make.
 */
export async function reachOfCombination(
  book: Book,
  named: string,
  request: ReachRequest,
): Promise<Result<ReachBundle>> {
  const read = readReachRequest(request);
  if (!read.ok) return read;
  const found = await findCombination(book, named);
  if (!found.ok) return found;
  const combination = found.value;
  const settings = await settingsOf(book);
  const correction = read.value.correction ?? settings.correction;
  const engine = await engineAtHand(book, combination.engineId, null);
  // All of it goes by what is in the book, other engines' superchargers and pulls among it; whatever changes that is in the log.
  const { entries } = await book.logPage({ limit: 1 });
  const rests = ['reach', request, correction, combination.id, entries[0]?.uid ?? null];
  return remembered(book, JSON.stringify(rests), async () => {
    const without = read.value.without;
    const parts = await partsListOf(book);
    const base = await baseOf(book, combination, engine);
    if (!base.ok) return { ok: false, remarks: withDisplacement(base.remarks, combination) };
    const { matched, baseline } = base.value;
    const air = matched?.ready.input.air ?? baseline.air;
    const factor = correction === 'observed' ? 1 : CORRECTIONS[correction].factor(air);
    const pulls = await viewedPulls(book, engine.pulls.get(combination.id) ?? [], correction);
    const reached = pulls.filter(({ view }) => view.correction.reached);
    const costOf = (part: keyof typeof USUAL_COSTS) => parts.costs[part] ?? USUAL_COSTS[part];
    const { builds, remarks } = await buildsOf(book, {
      combination,
      engine,
      matched,
      cost: costOf('supercharger'),
      presentAlone: without.includes('supercharger'),
    });
    const supply = fuelSupplyOf(combination.sheet, {
      induction: inductionOfSheet(combination.sheet),
      lambda: lambdaOf(reached),
    });
    const pairs = without.includes('breathing')
      ? { breathing: [], remarks: [] }
      : await breathingOfPairs({
          combination,
          engine,
          baseline,
          cost: costOf('breathing'),
          viewed: (of) => viewedPulls(book, engine.pulls.get(of.id) ?? [], 'sae-j1349'),
          matchOf: (of) => matchOf(book, of, engine, { combination, matched }),
        });
    const { remarks: ofThings, ...things } = thingsToChange(parts, {
      sheet: combination.sheet,
      baseline,
      cooler: matched?.ready.input.cooler ?? null,
      supply,
      without,
      speedLimits: null,
      target: read.value.target,
    });
    const measured = measuredOf(reached);
    const target =
      read.value.target ??
      aLittleMore(builds[0]!, baseline, { factor, boostCap: read.value.boostCap, measured: measured?.power });
    const now = figureOfPulls(reached, target);
    const input: ReachInput = {
      target,
      standard: { id: correction, factor },
      builds,
      baseline,
      measuredNow: now === null ? null : { power: now, pullIds: measured!.pullIds },
      ...things,
      breathing: [...pairs.breathing, ...things.breathing],
      supply,
      thresholds: settings.ruleThresholds,
      binding: parts.binding,
      mostChanges: read.value.mostChanges,
      mostRungs: MOST_RUNGS,
      draws: read.value.draws,
      seed: read.value.seed,
    };
    const trouble = troubleOfTarget(input);
    if (trouble !== null) return refused(trouble);
    const near = await nearCandidates(book, target, { engineId: combination.engineId, correction });
    return accepted({
      combinationId: combination.id,
      name: combination.name,
      combination: 0,
      isInvented: combination.invented,
      asked: askedOf(request, read.value, correction),
      input,
      measured,
      near,
      sources: await sourcesOf(
        book,
        input,
        near.flatMap(({ pullIds }) => pullIds),
      ),
      remarks: [...base.value.remarks, ...remarks, ...pairs.remarks, ...ofThings],
    });
  });
}

/** Where nothing at all was pulled, what the engine's size alone would say. */
const withDisplacement = (remarks: Remark[], { sheet }: Combination): Remark[] =>
  remarks.some(({ code }) => code === 'no-baseline')
    ? [...remarks, ...powerByDisplacementRemark(sheet)]
    : remarks;

interface Base {
  /** `null`: it has no supercharger. */
  matched: Matched | null;
  baseline: Baseline;
  remarks: Remark[];
}

async function baseOf(book: Book, combination: Combination, engine: EngineAtHand): Promise<Result<Base>> {
  if (isSupercharged(combination.sheet)) {
    const matched = await matchOfEngine(book, combination, { engine, compared: [combination], choices: {} });
    if (!matched.ok) return matched;
    return accepted({ matched: matched.value, baseline: matched.value.ready.input.baseline, remarks: [] });
  }
  const alone = await baselineFor(book, combination, engine);
  if (!alone.ok) return alone;
  return accepted({ matched: null, baseline: alone.value.baseline, remarks: alone.value.assumptions });
}

/** The match of a combination of this engine, for what a change did under boost. */
async function matchOf(
  book: Book,
  of: Combination,
  engine: EngineAtHand,
  { combination, matched }: { combination: Combination; matched: Matched | null },
): Promise<MatchCase | null> {
  if (of.id === combination.id) return matched?.ready ?? null;
  const made = await matchOfEngine(book, of, { engine, compared: [of], choices: {} });
  return made.ok ? made.value.ready : null;
}

/** Mean of counted pulls on the speeds they share, in the standard they were viewed in; `null`: none, or none shared. */
function measuredOf(pulls: readonly ViewedPull[]): ReachBundle['measured'] {
  if (pulls.length === 0) return null;
  const engineSpeedRpm = commonSpeeds(pulls);
  if (engineSpeedRpm.length === 0) return null;
  const meanAt = (meaning: 'power' | 'boost') => {
    const rows = pulls.map(({ view }) => readAt(view, meaning, engineSpeedRpm));
    return engineSpeedRpm.map((_, node) => mean(rows.map((row) => row[node]!)));
  };
  const boost = meanAt('boost');
  return {
    pullIds: pulls.map(({ pull }) => pull.id),
    engineSpeedRpm,
    power: meanAt('power'),
    boost: boost.every(Number.isFinite) ? boost : null,
  };
}

/** Lambda of the last pull that logged it, at its highest power; `null`: none did. */
function lambdaOf(pulls: readonly ViewedPull[]): number | null {
  const logged = pulls.filter(({ view }) => view.curve?.channels.has('lambda')).at(-1);
  if (logged === undefined) return null;
  const speeds = commonSpeeds([logged]);
  const power = readAt(logged.view, 'power', speeds);
  const lambda = readAt(logged.view, 'lambda', speeds)[power.indexOf(Math.max(...power))];
  return lambda !== undefined && Number.isFinite(lambda) ? lambda : null;
}

/** Names of all that the input and its neighbours rest on. */
async function sourcesOf(book: Book, input: ReachInput, near: readonly string[]): Promise<NamedSource[]> {
  const pullIds = new Set([
    ...input.baseline.pullIds,
    ...(input.measuredNow?.pullIds ?? []),
    ...input.builds.flatMap(({ fit }) => fit?.restsOn ?? []),
    ...input.breathing.flatMap((one) => one.pullIds),
    ...near,
  ]);
  const mapIds = new Set(input.builds.flatMap(({ match }) => match?.input.compressor.map.mapId ?? []));
  const pulls = await book.pullHeadsOf([...pullIds]);
  const maps = (await book.compressorMaps()).filter(({ id }) => mapIds.has(id));
  const combinations = await book.combinationNames();
  return [
    ...pulls.map(({ id, name }): NamedSource => ({ kind: 'pull', id, name })),
    ...combinations.map(({ id, name }): NamedSource => ({ kind: 'combination', id, name })),
    ...maps.map(({ id, name }): NamedSource => ({ kind: 'map', id, name })),
  ];
}
