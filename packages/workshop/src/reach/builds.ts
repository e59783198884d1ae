import { type CompressorMap, keyOfMap } from '@pullbook/core/airpath';
import {
  type Combination,
  type CombinationSheet,
  isSupercharged,
  type SectionId,
  type SheetValue,
  sheetValue,
} from '@pullbook/core/combination';
import { withFit } from '@pullbook/core/fit';
import type { CostClass, Ground, ReachBuild, ReachChange, SheetEdit } from '@pullbook/core/reach';
import { type Remark, remark, said } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { isSameUnit } from '../match/choose-donor.ts';
import type { EngineAtHand } from '../match/engine-at-hand.ts';
import { type Matched, matchOfEngine } from '../match/match-of-engine.ts';

/** Sections that come and go with a supercharger. */
const OF_A_SUPERCHARGER: readonly SectionId[] = ['supercharger', 'drive', 'cooler'];

export interface BuildsOf {
  combination: Combination;
  engine: EngineAtHand;
  /** `null`: it has no supercharger. */
  matched: Matched | null;
  cost: CostClass;
  /** Others are left out. */
  presentAlone: boolean;
}

/**
 * The engine as it is, without a supercharger, and with every other supercharger that the book knows, each on this engine's own baseline:
 * those of its combinations by their sheets, and maps that no sheet names yet. What cannot be matched is left out and said.
 */
export async function buildsOf(
  book: Book,
  from: BuildsOf,
): Promise<{ builds: ReachBuild[]; remarks: Remark[] }> {
  const { combination, matched, presentAlone } = from;
  const present: ReachBuild = {
    id: 'present',
    name: unitOf(combination.sheet) ?? 'as it is',
    isPresent: true,
    match: matched && { input: matched.ready.input, spread: matched.ready.spread },
    fit: matched?.takenIn ?? null,
    madeOf: matched?.madeOf ?? null,
    sheet: combination.sheet,
    change: null,
    assumptions: matched?.ready.assumptions ?? [],
  };
  if (presentAlone) return { builds: [present], remarks: [] };
  const alone = matched === null ? [] : [withoutSupercharger(combination.sheet, from.cost)];
  const { sheets, remarks } = await otherSheets(book, combination.sheet);
  const builds: ReachBuild[] = [];
  for (const other of sheets) {
    const made = await otherBuild(book, other, from);
    if ('build' in made) builds.push(made.build);
    else remarks.push(leftOut(other.name, made.remarks[0]));
  }
  return { builds: [present, ...alone, ...builds], remarks };
}

/** The engine without its supercharger; it was pulled, or its curve scaled, so it is known best of all. */
export function withoutSupercharger(sheet: CombinationSheet, cost: CostClass): ReachBuild {
  const change: ReachChange = {
    part: 'supercharger',
    said: said`No supercharger in place of ${unitOf(sheet) ?? 'the one fitted'}`,
    edits: [],
    clears: [...OF_A_SUPERCHARGER],
    cost,
    ground: 'measured by you',
    from: said`the engine's own pulls without supercharger`,
  };
  return {
    id: 'none',
    name: 'no supercharger',
    isPresent: false,
    match: null,
    fit: null,
    madeOf: null,
    sheet: withSections(sheet, {}),
    change,
    assumptions: [],
  };
}

/** Another supercharger's lines in place of a sheet's own. What comes with none of its own cooler keeps the one that is fitted. */
export function withSections(sheet: CombinationSheet, other: CombinationSheet['sections']): CombinationSheet {
  const sections = { ...sheet.sections };
  for (const id of OF_A_SUPERCHARGER) delete sections[id];
  const added = OF_A_SUPERCHARGER.flatMap((id) =>
    other[id] === undefined ? [] : [[id, other[id]] as const],
  );
  return { ...sheet, sections: { ...sections, ...Object.fromEntries(added) } };
}

/** What it takes to come from one sheet to another that differs by its supercharger. */
export function changeOfSupercharger(
  before: CombinationSheet,
  after: CombinationSheet,
  { name, cost, ground, from }: { name: string; cost: CostClass; ground: Ground; from: string },
): ReachChange {
  const present = isSupercharged(before) ? (unitOf(before) ?? 'the one fitted') : 'none';
  return {
    part: 'supercharger',
    said: said`Supercharger ${name} in place of ${present}`,
    edits: OF_A_SUPERCHARGER.flatMap((section) => editsOf(section, after.sections[section] ?? {})),
    clears: [...OF_A_SUPERCHARGER],
    cost,
    ground,
    from: said`${from}`,
  };
}

const editsOf = (section: SectionId, lines: Record<string, SheetValue>): SheetEdit[] =>
  Object.entries(lines).flatMap(([field, { text, kind }]) =>
    kind === 'table' ? [] : [{ section, field, text }],
  );

export const unitOf = (sheet: CombinationSheet): string | null => {
  const text = sheetValue(sheet, 'supercharger', 'unit')?.text.trim() ?? '';
  return text === '' || text === 'unknown' ? null : text;
};

interface OtherSheet {
  id: string;
  name: string;
  sheet: CombinationSheet;
  from: string;
  /** What is taken for what nobody said. */
  assumptions: Remark[];
}

/** Sheets of this engine with each other supercharger of the book. */
async function otherSheets(
  book: Book,
  sheet: CombinationSheet,
): Promise<{ sheets: OtherSheet[]; remarks: Remark[] }> {
  const isBlown = isSupercharged(sheet);
  const known: Combination[] = [];
  const names = await book.combinationNames();
  for (const { id } of names) {
    const one = await book.combination(id);
    if (one === null || !isSupercharged(one.sheet) || (isBlown && isSameUnit(one, sheet))) continue;
    if (!known.some((other) => isSameUnit(one, other.sheet))) known.push(one);
  }
  const sheets = known.map((one): OtherSheet => {
    const { supercharger, drive, cooler } = one.sheet.sections;
    const own = isBlown ? sheet.sections.cooler : cooler;
    return {
      id: `unit of ${one.id}`,
      name: unitOf(one.sheet) ?? `as on ${one.name}`,
      sheet: withSections(sheet, {
        ...(supercharger && { supercharger }),
        ...(drive && { drive }),
        ...(own && { cooler: own }),
      }),
      from: `the sheet of "${one.name}"`,
      assumptions: [],
    };
  });
  const named = new Set(
    [sheet, ...known.map((one) => one.sheet)].map((one) =>
      sheetValue(one, 'supercharger', 'map')?.text.trim().toLowerCase(),
    ),
  );
  const maps = (await book.compressorMaps()).filter(({ name }) => !named.has(name.trim().toLowerCase()));
  if (!isBlown && known.length === 0 && maps.length > 0) return { sheets, remarks: [mapsWithoutDrive(maps)] };
  const pattern = isBlown ? sheet : sheets[0]?.sheet;
  return {
    sheets: [...sheets, ...maps.flatMap((map) => (pattern === undefined ? [] : [sheetOfMap(map, pattern)]))],
    remarks: [],
  };
}

/** A map that no sheet names, in the drive of the supercharger at hand: its gears and its limit nobody has said. */
function sheetOfMap(map: CompressorMap, pattern: CombinationSheet): OtherSheet {
  const { supercharger = {} } = pattern.sections;
  const line = (text: string): SheetValue => ({ text, value: null, kind: 'text', origin: 'assumed' });
  const kept = Object.fromEntries(
    ['type', 'stepUp', 'bypassAtFullThrottle'].flatMap((field) =>
      supercharger[field] === undefined ? [] : [[field, supercharger[field]]],
    ),
  );
  const sections = {
    ...pattern.sections,
    supercharger: { ...kept, unit: line(map.name), map: line(map.name) },
  };
  return {
    id: `map ${map.id}`,
    name: map.name,
    sheet: { ...pattern, sections },
    from: `the compressor map "${map.name}" of the book`,
    assumptions: [
      remark(
        'caution',
        'map-without-unit',
        `Of "${map.name}" only its map is known: gears and pulleys are taken as those fitted now, and since no highest speed of its impeller is known, nothing binds there. Enter a combination with it and the maker's limit before anything is bought.`,
      ),
    ],
  };
}

async function otherBuild(
  book: Book,
  { id, name, sheet, from, assumptions }: OtherSheet,
  { combination, engine, matched, cost }: BuildsOf,
): Promise<{ build: ReachBuild } | { remarks: Remark[] }> {
  const made = await matchOfEngine(
    book,
    { ...combination, id, name, sheet },
    { engine, compared: [], choices: { air: matched?.ready.input.air } },
  );
  if (!made.ok) return made;
  const { ready, madeOf, takenIn } = made.value;
  // What the present one's fit found of the engine holds beside another supercharger; of the map it takes nothing.
  const fit = takenIn ?? matched?.takenIn ?? null;
  const match = takenIn === null && fit !== null ? withFit(ready, fit) : ready;
  const isMapped = match.input.compressor.map.form === 'points';
  const isOfAnother = matched !== null && keyOfMap(match.input) !== keyOfMap(matched.ready.input);
  return {
    build: {
      id,
      name,
      isPresent: false,
      match: { input: match.input, spread: match.spread },
      fit,
      madeOf,
      sheet,
      change: changeOfSupercharger(combination.sheet, sheet, {
        name,
        cost,
        ground: isMapped ? 'scaled from your data' : 'rule of thumb',
        from,
      }),
      assumptions: [
        ...ready.assumptions.filter(({ code }) => fit === null || code !== 'not-fitted'),
        ...assumptions,
        ...(isOfAnother && takenIn === null && fit !== null ? [ENGINE_OF_FIT] : []),
      ],
    },
  };
}

const ENGINE_OF_FIT = remark(
  'note',
  'fit-of-engine',
  'Never pulled with this supercharger: what the engine swallows and how its charge warms are taken from the fit of the present one, its head from its own map.',
);

const leftOut = (name: string, reason: Remark | undefined): Remark => ({
  ...(reason ?? remark('note', 'build-left-out', 'It cannot be matched.')),
  level: 'note',
  code: 'build-left-out',
  message: `Not tried, ${name}: ${reason?.message ?? 'it cannot be matched.'}`,
});

const mapsWithoutDrive = (maps: readonly CompressorMap[]): Remark =>
  remark(
    'note',
    'maps-without-drive',
    `Not tried: ${maps.map(({ name }) => `"${name}"`).join(', ')}. The book has the map, but no combination says by what gears and pulleys it would be driven. Enter one.`,
  );
