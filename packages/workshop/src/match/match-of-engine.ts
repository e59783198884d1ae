import type { AirState } from '@pullbook/core/air';
import {
  airOfViewedPull,
  type Baseline,
  type MatchReady,
  matchInputOf,
  meanAir,
  type OtherFuel,
  type SheetToMatch,
  type ViewedPull,
} from '@pullbook/core/airpath';
import type { Combination } from '@pullbook/core/combination';
import { assumedBesideFit, boostedPullOf, type FitTarget, type MatchFit } from '@pullbook/core/fit';
import { type Fuel, fuelOfSheet } from '@pullbook/core/fuel';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { longWork } from '../long-work/long-work.ts';
import { remembered } from '../remembered.ts';
import { type BaselineFound, baselineFor } from './baseline-for.ts';
import { chooseDonor, isSameUnit } from './choose-donor.ts';
import { type EngineAtHand, pulledOf } from './engine-at-hand.ts';
import { adapted, fittedOnTheirFuels, otherFuelOf, type TargetsOfOne } from './fuels-of-match.ts';
import { type MapFound, mapForSheet } from './map-for-sheet.ts';
import { viewedPulls } from './viewed-pulls.ts';

export interface MatchChoices {
  /** Other weather than that of the pulls; `null`: theirs. */
  air?: AirState | null | undefined;
  /** Fit to the pulls of these combinations alone, by id: to see one predicted by another. Missing: to whatever was pulled. */
  fitOn?: readonly string[] | undefined;
}

/** What a combination is matched among. */
export interface MatchAmong {
  engine: EngineAtHand;
  /** Combinations of the engine that are compared with it: pulls of those with one supercharger are fitted at once. */
  compared: readonly Combination[];
  choices: MatchChoices;
}

/** A match of one combination with what it was made of. */
export interface Matched {
  ready: MatchReady;
  /** Of its own boosted pulls; `null`: none was fitted. */
  fit: MatchFit | null;
  /** What the match took in: its own fit, or that of a combination with the same supercharger; `null`: none. */
  takenIn: MatchFit | null;
  /** What it was made of before any fit. */
  madeOf: SheetToMatch;
  /** Its own counted pulls. */
  pulls: ViewedPull[];
}

/** What stands in front of every match of a combination. */
interface Parts extends Pick<Combination, 'sheet'>, BaselineFound, MapFound {
  /** Where it burns another fuel than the baseline did; `null`: the same. */
  other: OtherFuel | null;
  fuelBehind: Fuel;
}

/**
 * The match of a supercharged combination of an engine: its map, its baseline, its factors fitted to its own boosted pulls or
 * taken from the nearest combination with the same supercharger, in the air of its pulls; without any, in that of the pulls its fit is taken from, so
 * that what a search foretold in that air is found again, else in that of the pulls without supercharger.
 */
export async function matchOfEngine(
  book: Book,
  combination: Combination,
  { engine, compared, choices }: MatchAmong,
): Promise<Result<Matched>> {
  const parts = await partsOf(book, combination, engine);
  if (!parts.ok) return parts;
  const pulls = await viewedPulls(book, engine.pulls.get(combination.id) ?? []);
  const fitted = await fittedBy(book, combination, { engine, compared, choices });
  const own = airOf(pulls);
  const { air, remarks: ofAir } =
    choices.air != null || own !== null
      ? { air: choices.air ?? own!, remarks: [] }
      : await airOfOthers(book, combination, { engine, donor: fitted.donor, baseline: parts.value.baseline });
  const last = pulls.at(-1)?.pull;
  const madeOf: SheetToMatch = {
    sheet: parts.value.sheet,
    baseline: parts.value.baseline,
    map: parts.value.map,
    air,
    ...(last === undefined ? {} : { tune: last.tune, places: last.places }),
    fuelBehind: parts.value.fuelBehind,
  };
  const ready = matchInputOf(madeOf);
  if (!ready.ok) return ready;
  const by = fitted.fit ?? fitted.taken;
  const { match, remarks } = adapted(ready.value, by, parts.value.other);
  const assumptions = [
    ...parts.value.assumptions,
    ...assumedBesideFit(ready.value.assumptions, by),
    ...ready.remarks,
    ...fitted.remarks,
    ...ofAir,
    ...remarks,
  ];
  return accepted({ ready: { ...match, assumptions }, fit: fitted.fit, takenIn: by, madeOf, pulls });
}

/** Mean of what pulls say of their air; `null`: none says. */
function airOf(pulls: readonly ViewedPull[]): AirState | null {
  const airs = pulls.flatMap((one) => {
    const air = airOfViewedPull(one);
    return air.ok ? [air.value] : [];
  });
  return airs.length > 0 ? meanAir(airs) : null;
}

/** For a combination whose own pulls say none. */
async function airOfOthers(
  book: Book,
  { name }: Combination,
  { engine, donor, baseline }: { engine: EngineAtHand; donor: Combination | null; baseline: Baseline },
): Promise<{ air: AirState; remarks: Remark[] }> {
  const theirs = donor === null ? null : airOf(await viewedPulls(book, engine.pulls.get(donor.id) ?? []));
  return theirs === null
    ? { air: baseline.air, remarks: [airTaken(name, 'the pulls without supercharger')] }
    : { air: theirs, remarks: [airTaken(name, `the pulls of "${donor!.name}", whose fit it takes`)] };
}

async function partsOf(book: Book, combination: Combination, engine: EngineAtHand): Promise<Result<Parts>> {
  const map = await mapForSheet(book, combination.sheet);
  if (!map.ok) return map;
  const baseline = await baselineFor(book, combination, engine);
  if (!baseline.ok) return baseline;
  const assumptions = [...map.value.assumptions, ...baseline.value.assumptions];
  const { sheet } = combination;
  const other = otherFuelOf(sheet, baseline.value.behind);
  return accepted({
    ...map.value,
    ...baseline.value,
    sheet,
    assumptions,
    other,
    fuelBehind: other?.before ?? fuelOfSheet(sheet).fuel,
  });
}

interface FittedBy {
  fit: MatchFit | null;
  taken: MatchFit | null;
  /** Whose fit was taken; `null`: its own, or none. */
  donor: Combination | null;
  remarks: Remark[];
}

/** The fit of a combination's own pulls, or the one it takes from another with the same supercharger. */
async function fittedBy(
  book: Book,
  combination: Combination,
  { engine, compared, choices: { fitOn } }: MatchAmong,
): Promise<FittedBy> {
  const pulled = pulledOf(engine).filter(({ id }) => fitOn === undefined || fitOn.includes(id));
  const fitWithThoseCompared = async (one: Combination): Promise<Result<MatchFit>> => {
    const group = compared.filter(({ id }) => id === one.id || pulled.some((other) => other.id === id));
    const sameUnit = group.filter((other) => isSameUnit(other, one.sheet));
    const place = sameUnit.findIndex(({ id }) => id === one.id);
    const together = place < 0 ? null : await fitsOf(book, engine, sameUnit);
    if (together?.ok) return accepted(together.value[place]!, together.remarks);
    // What keeps one of them out of a common fit must not keep the others from their own.
    const alone = await fitsOf(book, engine, [one]);
    return alone.ok ? accepted(alone.value[0]!, alone.remarks) : alone;
  };
  const unfitted: Remark[] = [];
  if (pulled.some(({ id }) => id === combination.id)) {
    const own = await fitWithThoseCompared(combination);
    const leftOut = own.remarks.map(asCaution);
    if (own.ok)
      return {
        fit: own.value,
        taken: null,
        donor: null,
        remarks: [...leftOut, ...fittedToLast(combination, engine)],
      };
    unfitted.push(...leftOut);
  }
  const donor = chooseDonor(combination, pulled);
  const fit = donor === null ? null : await fitWithThoseCompared(donor);
  if (donor === null || !fit?.ok)
    return { fit: null, taken: null, donor: null, remarks: [...unfitted, notFitted(combination.name)] };
  const remarks = [
    ...unfitted,
    fitTaken(combination.name, donor.name, fit.value),
    ...fit.remarks,
    ...fittedToLast(donor, engine),
  ];
  return { fit: null, taken: fit.value, donor, remarks };
}

/**
 * Pulls of one combination that are fitted. More tell next to nothing: what their gauges, their map and their baseline have wrong
 * they have in common, and it does not average out, while a fit takes as much longer as there are more.
 */
const MOST_FITTED = 6;

/**
 * Combinations fitted at once, a fit for each; each pull is matched in its own air, with its own cooler water and tap. A pull that
 * cannot be fitted is left out and said; refused where a combination has no other.
 */
async function fitsOf(
  book: Book,
  engine: EngineAtHand,
  combinations: readonly Combination[],
): Promise<Result<MatchFit[]>> {
  const targets: TargetsOfOne[] = [];
  const leftOut: Remark[] = [];
  for (const combination of combinations) {
    const parts = await partsOf(book, combination, engine);
    if (!parts.ok) return parts;
    const ofOne: FitTarget[] = [];
    const unfit: Remark[] = [];
    const heads = engine.pulls.get(combination.id) ?? [];
    for (const viewed of await viewedPulls(book, heads.slice(-MOST_FITTED))) {
      const pull = boostedPullOf(viewed, combination.sheet);
      if (!pull.ok) {
        unfit.push(...pull.remarks);
        continue;
      }
      const { tune, places } = viewed.pull;
      const ready = matchInputOf({ ...parts.value, air: pull.value.air, tune, places });
      if (!ready.ok) return ready;
      ofOne.push({ ...ready.value, pull: pull.value });
    }
    const [first, ...rest] = unfit;
    if (ofOne.length === 0 && first !== undefined) return refused(first, ...rest);
    leftOut.push(...unfit.map(asCaution));
    targets.push({ targets: ofOne, other: parts.value.other });
  }
  // The slowest part of a match, so off the main thread; other weather and other trials ask for the same again.
  const fits = await fittedOnTheirFuels(targets, (made) =>
    remembered(book, JSON.stringify(['fit', made]), () => longWork.run('fitTogether', made)),
  );
  return fits.ok ? accepted(fits.value, leftOut) : fits;
}

function fittedToLast({ id, name }: Combination, { pulls }: EngineAtHand): Remark[] {
  const count = pulls.get(id)?.length ?? 0;
  if (count <= MOST_FITTED) return [];
  const text = `${name} has ${count} pulls that count; the factors are fitted to the ${MOST_FITTED} added last.`;
  return [remark('note', 'fitted-to-last', text)];
}

const asCaution = (one: Remark): Remark => (one.level === 'refusal' ? { ...one, level: 'caution' } : one);

const notFitted = (name: string): Remark =>
  remark(
    'note',
    'not-fitted',
    `${name}: not fitted to any boosted pull, so its factors stand at what is usual. One boosted pull with this supercharger makes the band a good deal narrower.`,
  );

const airTaken = (name: string, of: string): Remark =>
  remark(
    'note',
    'air-taken',
    `${name}: no pull of its own says what air it ran in; it is matched in that of ${of}. Give other weather where it will run in other.`,
  );

const fitTaken = (name: string, donor: string, { restsOn }: MatchFit): Remark =>
  remark(
    'note',
    'fit-taken',
    `${name} is not fitted to pulls of its own: it takes the factors fitted to "${donor}", which has the same supercharger; the fit rests on ${restsOn.length} ${restsOn.length === 1 ? 'pull' : 'pulls'}.`,
  );
