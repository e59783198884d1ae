import { CORRECTIONS } from '@pullbook/core/air';
import { fuelSupplyOf, inductionOfSheet } from '@pullbook/core/fuel';
import { type PartsList, type ReachInput, troubleOfTarget, USUAL_COSTS } from '@pullbook/core/reach';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { RuleThresholds } from '@pullbook/core/rule';
import { type MatchFile, readMatchText, readPartsText, type WrittenReach } from '@pullbook/formats';
import type { ReachBundle } from '@pullbook/views/reach';
import { askedOf, type ReachRequest, readReachRequest } from '../edge/reach-request.ts';
import { thresholdFrom } from '../edge/rule-thresholds.ts';
import { type FileAround, fileBeside, sheetOfFile } from '../match/match-from-file.ts';
import { settingsOf } from '../settings.ts';
import { type BuildsOfFile, buildsOfFile } from './builds-of-file.ts';
import { partsListOf } from './parts-list.ts';
import { aLittleMore, MOST_RUNGS } from './target-of-search.ts';
import { thingsToChange } from './things-to-change.ts';

/** What a file asks, with the maps that its superchargers have. */
export interface ReachFromFile {
  bundle: ReachBundle;
  /** By build; `null`: its sheet says it, or the book has it. */
  maps: BuildsOfFile['maps'];
  /** Whether a power was asked for, by the file or beside it. */
  hasTarget: boolean;
}

/**
 * All that a search from a target needs, of a match file as it is: its match, the engine without the supercharger, the superchargers its `reach` section
 * names, and the parts list: the file's, else the book's, else what is usual. What is said on the command line goes before the file.
 * Powers are as observed in the air of the match unless a standard is named, so that they are those of `pullbook match`.
 */
export async function reachFromFile(
  text: string,
  request: ReachRequest,
  from: FileAround,
): Promise<Result<ReachFromFile>> {
  const read = readMatchText(text, from.fileName);
  if (!read.ok) return read;
  const file = read.value;
  if (file.overSpeed !== null) return refused(IS_A_RUNG);
  const section = file.reach;
  const said = readReachRequest(request, section);
  if (!said.ok) return said;
  const asked = said.value;
  const thresholds = await thresholdsOf(section, from);
  if (!thresholds.ok) return thresholds;
  const parts = await partsOf(section, from);
  if (!parts.ok) return parts;
  const sheet = await sheetOfFile(file, from);
  if (!sheet.ok) return sheet;
  const made = await buildsOfFile(file, sheet.value, {
    around: from,
    cost: parts.value.costs.supercharger ?? USUAL_COSTS.supercharger,
    presentAlone: asked.without.includes('supercharger'),
  });
  if (!made.ok) return made;
  const { builds, baseline, maps, remarks } = made.value;
  const present = builds[0]!;
  const correction = asked.correction ?? 'observed';
  const air = present.match?.input.air ?? baseline.air;
  const factor = correction === 'observed' ? 1 : CORRECTIONS[correction].factor(air);
  const supply = fuelSupplyOf(sheet.value, {
    induction: inductionOfSheet(sheet.value),
    lambda: section?.lambda ?? null,
  });
  const { remarks: ofThings, ...things } = thingsToChange(withoutStated(parts.value, file), {
    sheet: sheet.value,
    baseline,
    cooler: present.match?.input.cooler ?? null,
    supply,
    without: asked.without,
    speedLimits: section?.speedLimits ?? null,
    target: asked.target,
  });
  const input: ReachInput = {
    target: asked.target ?? aLittleMore(present, baseline, { factor, boostCap: asked.boostCap }),
    standard: { id: correction, factor },
    builds,
    baseline,
    measuredNow: null,
    ...things,
    supply,
    thresholds: thresholds.value,
    binding: parts.value.binding,
    mostChanges: asked.mostChanges,
    mostRungs: MOST_RUNGS,
    draws: asked.draws,
    seed: asked.seed,
  };
  const trouble = troubleOfTarget(input);
  if (trouble !== null) return refused(trouble);
  return accepted({
    maps,
    hasTarget: asked.target !== null,
    bundle: {
      combinationId: null,
      name: file.name,
      combination: 0,
      isInvented: false,
      asked: askedOf(request, asked, correction),
      input,
      measured: null,
      near: [],
      sources: [],
      remarks: [...read.remarks, ...remarks, ...statedDrive(file), ...ofThings],
    },
  });
}

async function partsOf(
  section: WrittenReach | null,
  { book, folder }: FileAround,
): Promise<Result<PartsList>> {
  const base = await partsListOf(book);
  const said = section?.parts ?? null;
  if (said === null) return accepted(base);
  if (said.from === 'written') return accepted({ ...base, ...said.lists });
  const text = await fileBeside(said.path, 'parts list', { folder });
  if (!text.ok) return text;
  const read = readPartsText(text.value, said.path);
  return read.ok ? accepted({ ...base, ...read.value }, read.remarks) : read;
}

/** The file's thresholds on top of the shop's. */
async function thresholdsOf(
  section: WrittenReach | null,
  { book }: FileAround,
): Promise<Result<RuleThresholds>> {
  const own = book === null ? {} : (await settingsOf(book)).ruleThresholds;
  const read = Object.entries(section?.thresholds ?? {}).map(([id, text]) => thresholdFrom(id, text));
  const [first, ...others] = read.flatMap(({ remarks }) => remarks);
  if (first !== undefined) return refused(first, ...others);
  const said = read.flatMap((one) => (one.ok ? [[one.value.id, one.value.value]] : []));
  return accepted({ ...own, ...Object.fromEntries(said) });
}

/** A ratio that the model states is no pulley's: another pulley on the sheet would change nothing. */
function withoutStated(parts: PartsList, { model }: MatchFile): PartsList {
  return {
    ...parts,
    ...(model.pulleyRatio === undefined ? {} : { blowerPulleys: [], crankPulleys: [] }),
    ...(model.stepUp === undefined ? {} : { stepUps: [] }),
  };
}

const statedDrive = ({ model }: MatchFile): Remark[] =>
  model.pulleyRatio === undefined ? [] : [RATIO_STATED];

const RATIO_STATED = remark(
  'caution',
  'pulley-ratio-stated',
  'The file states the pulley ratio under model, so no other pulley is tried. Take it out there and give both pulleys under combination, drive.',
);

const IS_A_RUNG = remark(
  'refusal',
  'reach-of-rung',
  'The file has factors over engine speed (overSpeed): it is one way of a search, written by "pullbook reach --out". Ask of the file that it was made of.',
);
