import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import {
  type Baseline,
  baselineFromPulls,
  baselineFromTable,
  type CompressorMap,
  coolerRemarks,
  fitMap,
  type MatchInput,
  type MatchReady,
  matchInputOf,
  type OtherFuel,
  type SheetToMatch,
  solveMatch,
} from '@pullbook/core/airpath';
import { type CombinationSheet, deriveFigures } from '@pullbook/core/combination';
import {
  assumedBesideFit,
  boostedPullOf,
  type FitTarget,
  fitTogether,
  type MatchFit,
} from '@pullbook/core/fit';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { findingsOfMatch } from '@pullbook/core/rule';
import { type MatchFile, readCombinationText, readMapText, readMatchText } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { type MatchedCombination, whatIfCase } from '@pullbook/views/match';
import { MATCH_CAUTIONS, type MatchReportOfOne } from '../edge/match-report.ts';
import { edgeRemarks } from '../edge/remark.ts';
import { findCombination, findPull } from '../find-named.ts';
import { findMap } from '../maps.ts';
import type { BandsAsked } from './bands-of-match.ts';
import { otherFuelOfFile } from './fuel-of-file.ts';
import { adapted, fittedOnTheirFuels, suppliedBy } from './fuels-of-match.ts';
import { type MapFound, mapForSheet } from './map-for-sheet.ts';
import { matchedReports, type Tried } from './match-report-of.ts';
import { viewedPulls } from './viewed-pulls.ts';
import { withOverSpeed } from './with-over-speed.ts';

/** Where a match file stands. */
export interface FileAround {
  /** For messages. */
  fileName: string;
  /** From where the file's own paths are. */
  folder: string;
  /** `null`: there is none; what the file names in a book is then refused. */
  book: Book | null;
}

export interface MatchFromFile extends FileAround {
  /** What was said on the command line goes before the file; `null`: no bands whatever it says. */
  bands: BandsAsked | null;
  /** Units of sentences for a person; `null`: SI. */
  words: ViewOptions | null;
}

/** The match that a file describes, with what it tries; nothing of it is kept. */
export async function matchFromFile(text: string, from: MatchFromFile): Promise<Result<MatchReportOfOne>> {
  const read = readMatchText(text, from.fileName);
  if (!read.ok) return read;
  const file = read.value;
  const matched = await matchedOf(file, from);
  if (!matched.ok) return matched;
  const tried: Tried[] = [];
  for (const { name, ...whatIf } of file.whatIf) {
    const bundle = {
      trialId: null,
      title: file.name,
      silent: [],
      combinations: [matched.value],
      left: [],
      remarks: [],
    };
    const changed = whatIfCase(bundle, { key: matched.value.key, ...whatIf });
    if (changed !== null) tried.push({ original: matched.value, changed: { ...changed, name } });
  }
  const bands = from.bands === null || file.bands === null ? null : bandsOf(file.bands, from.bands);
  const [first, ...others] = await matchedReports([matched.value], tried, bands, from.words);
  const { key: _, ...rest } = first!;
  return accepted({
    schemaVersion: 1,
    trialId: null,
    title: file.name,
    draws: bands?.draws ?? null,
    seed: bands?.seed ?? null,
    key: '',
    ...rest,
    tried: others,
    left: [],
    remarks: edgeRemarks(read.remarks, from.fileName, from.words),
    cautions: [...MATCH_CAUTIONS],
  });
}

const bandsOf = (
  inFile: { draws: number; seed: number },
  said: BandsAsked,
): { draws: number; seed: number } => ({
  draws: said.draws ?? inFile.draws,
  seed: said.seed ?? inFile.seed,
});

/** One match ready to be reported, in the shape that the book's matches have. */
async function matchedOf(file: MatchFile, from: MatchFromFile): Promise<Result<MatchedCombination>> {
  const sheet = await sheetOfFile(file, from);
  if (!sheet.ok) return sheet;
  const made = await matchOfFile(file, sheet.value, from);
  if (!made.ok) return made;
  const { input, spread, fit, madeOf, assumptions } = made.value;
  const curve = solveMatch(input);
  return accepted({
    key: 'A',
    combinationId: '',
    name: sheet.value.name || file.name,
    combination: 0,
    input,
    spread,
    fit,
    measured: null,
    supply: suppliedBy(sheet.value, madeOf),
    assumptions: [...assumptions, ...coolerRemarks(input, curve)],
    findings: findingsOfMatch('match', input, curve, { fit }),
  });
}

/** A match as its file describes it, with what it took in. */
export interface MatchOfFile extends MatchReady {
  /** `null`: the file asks for none. */
  fit: MatchFit | null;
  /** What it was made of before any fit. */
  madeOf: SheetToMatch;
}

/** The match of a file whose sheet is known. */
export async function matchOfFile(
  file: MatchFile,
  sheet: CombinationSheet,
  from: FileAround,
): Promise<Result<MatchOfFile>> {
  const map = await mapOfFile(file.map, sheet, from);
  if (!map.ok) return map;
  const baseline = await baselineOfFile(file, sheet, from);
  if (!baseline.ok) return baseline;
  const air = file.air ?? baseline.value.air;
  const fuels = await otherFuelOfFile(file, sheet, from.book);
  if (!fuels.ok) return fuels;
  const other = fuels.value;
  const parts = {
    sheet,
    baseline: baseline.value,
    map: map.value.map,
    stated: file.model,
    fuelBehind: other?.before ?? suppliedBy(sheet).fuel,
  };
  const ready = matchInputOf({ ...parts, air });
  if (!ready.ok) return ready;
  const fit = await fitOf(file, parts, { air, other, from });
  if (!fit.ok) return fit;
  const { match, remarks } = adapted(ready.value, fit.value, other);
  const { spread } = match;
  const input = asStated(match.input, file.model);
  return accepted({
    input: withOverSpeed(input, file.overSpeed),
    spread,
    fit: fit.value,
    madeOf: { ...parts, air },
    assumptions: [
      ...map.value.assumptions,
      ...baseline.remarks,
      ...assumedBesideFit(ready.value.assumptions, fit.value),
      ...ready.remarks,
      ...fuels.remarks,
      ...remarks,
    ],
  });
}

/** What is stated of the charge is stated of it with the fuel that it has. */
function asStated(input: MatchInput, { evaporationCooling, fuelVapour }: MatchFile['model']): MatchInput {
  const { charge } = input;
  return {
    ...input,
    charge: {
      ...charge,
      evaporationCooling: evaporationCooling ?? charge.evaporationCooling,
      fuelVapour: fuelVapour ?? charge.fuelVapour,
    },
  };
}

export async function sheetOfFile(
  { combination }: MatchFile,
  from: FileAround,
): Promise<Result<CombinationSheet>> {
  if (combination.from === 'sheet') return accepted(combination.sheet);
  if (combination.from === 'file') {
    const text = await fileBeside(combination.path, 'combination', from);
    return text.ok ? readCombinationText(text.value, combination.path) : text;
  }
  if (from.book === null) return refused(noBook('combination', combination.name));
  const found = await findCombination(from.book, combination.name);
  return found.ok ? accepted(found.value.sheet) : found;
}

/** The map that a file names or has written, else what the sheet says of its supercharger. */
export async function mapOfFile(
  map: MatchFile['map'],
  sheet: CombinationSheet,
  from: FileAround,
): Promise<Result<MapFound>> {
  if (map === null) return mapForSheet(from.book, sheet);
  const written = await writtenMap(map, from);
  if (!written.ok) return written;
  const fitted = fitMap(written.value);
  return fitted.ok
    ? accepted({ map: fitted.value, assumptions: [...written.remarks, ...fitted.remarks] })
    : fitted;
}

export async function writtenMap(
  map: NonNullable<MatchFile['map']>,
  from: FileAround,
): Promise<Result<CompressorMap>> {
  const own = { id: `file ${from.fileName}`, createdAt: '' };
  if (map.from === 'written') return accepted({ ...map.map, ...own });
  if (map.from === 'file') {
    const text = await fileBeside(map.path, 'map', from);
    if (!text.ok) return text;
    const read = readMapText(text.value, map.path);
    return read.ok ? accepted({ ...read.value, ...own }, read.remarks) : read;
  }
  return from.book === null ? refused(noBook('map', map.name)) : findMap(from.book, map.name);
}

export async function baselineOfFile(
  { baseline, model, frictionPower, baselineCharge, fit: _ }: MatchFile,
  sheet: CombinationSheet,
  from: FileAround,
): Promise<Result<Baseline>> {
  const made =
    baseline.from === 'table'
      ? baselineOfTable(baseline.curve, sheet, model)
      : await baselineOfPulls(baseline.pulls, sheet, from);
  if (!made.ok) return made;
  const found = { ...made.value, ...baselineCharge };
  if (frictionPower === null) return accepted(found, made.remarks);
  return accepted(
    { ...found, frictionPower: found.engineSpeedRpm.map(() => frictionPower) },
    made.remarks.filter(({ code }) => code !== 'friction-assumed'),
  );
}

function baselineOfTable(
  curve: Extract<MatchFile['baseline'], { from: 'table' }>['curve'],
  sheet: CombinationSheet,
  model: MatchFile['model'],
): Result<Baseline> {
  const figures = deriveFigures(sheet);
  const figure = (id: 'displacement' | 'compressionRatio') =>
    model[id] ?? figures.find((one) => one.id === id)?.value ?? null;
  const displacement = figure('displacement');
  if (displacement === null) return refused(NO_DISPLACEMENT);
  return baselineFromTable({ ...curve, displacement, compressionRatio: figure('compressionRatio') });
}

async function baselineOfPulls(
  pulls: readonly string[],
  sheet: CombinationSheet,
  { book }: FileAround,
): Promise<Result<Baseline>> {
  if (book === null) return refused(noBook('pull', pulls.join(', ')));
  const viewed = await pullsOf(book, pulls);
  return viewed.ok ? baselineFromPulls(viewed.value, sheet) : viewed;
}

async function pullsOf(book: Book, names: readonly string[]) {
  const heads = [];
  for (const name of names) {
    const found = await findPull(book, name);
    if (!found.ok) return found;
    heads.push(found.value);
  }
  return accepted(await viewedPulls(book, heads));
}

type Parts = Omit<Parameters<typeof matchInputOf>[0], 'air'>;

/** The fit that the file asks for; `null`: none. */
async function fitOf(
  { fit }: MatchFile,
  parts: Parts,
  { air, other, from: { book } }: { air: MatchInput['air']; other: OtherFuel | null; from: FileAround },
): Promise<Result<MatchFit | null>> {
  if (fit === null) return accepted(null);
  const targets: FitTarget[] = [];
  if (fit.from === 'table') {
    const pull = { ...fit.pull, pullId: 'table', air: fit.pull.air ?? air };
    const ready = matchInputOf({ ...parts, air: pull.air });
    if (!ready.ok) return ready;
    targets.push({ ...ready.value, pull });
  } else {
    if (book === null) return refused(noBook('pull', fit.pulls.join(', ')));
    const viewed = await pullsOf(book, fit.pulls);
    if (!viewed.ok) return viewed;
    for (const one of viewed.value) {
      const pull = boostedPullOf(one, parts.sheet);
      if (!pull.ok) return pull;
      const { tune, places } = one.pull;
      const ready = matchInputOf({ ...parts, air: pull.value.air, tune, places });
      if (!ready.ok) return ready;
      targets.push({ ...ready.value, pull: pull.value });
    }
  }
  const fitted = await fittedOnTheirFuels([{ targets, other }], async (made) => fitTogether(made));
  return fitted.ok ? accepted(fitted.value[0]!, fitted.remarks) : fitted;
}

/** Text of a file that the match file names, looked for beside it. */
export async function fileBeside(
  path: string,
  what: string,
  { folder }: Pick<FileAround, 'folder'>,
): Promise<Result<string>> {
  const file = resolve(folder, path);
  try {
    return accepted(await readFile(file, 'utf8'));
  } catch (trouble) {
    const why = (trouble as NodeJS.ErrnoException).code === 'ENOENT' ? 'is not there' : 'cannot be read';
    return refused(
      remark(
        'refusal',
        'file-of-match',
        `The match file names ${path} as its ${what}, but ${file} ${why}. Paths are looked for from the match file's own folder.`,
      ),
    );
  }
}

const noBook = (what: string, name: string): Remark =>
  remark(
    'refusal',
    'match-needs-book',
    `The match file names the ${what} "${name}" of a book, and there is no book here. Give it with --book, or write the ${what} into the file.`,
  );

const NO_DISPLACEMENT = remark(
  'refusal',
  'no-displacement',
  'The displacement is not known, so what the engine swallows is not either. Give bore, stroke and cylinders, or the displacement, under combination, shortBlock.',
);
