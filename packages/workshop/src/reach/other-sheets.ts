import type { CompressorMap } from '@pullbook/core/airpath';
import {
  type Combination,
  type CombinationSheet,
  isSupercharged,
  type SheetValue,
  sheetValue,
} from '@pullbook/core/combination';
import { type Remark, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { isSameUnit } from '../match/choose-donor.ts';
import { unitOf, withSections } from './another-supercharger.ts';

export interface OtherSheet {
  id: string;
  name: string;
  sheet: CombinationSheet;
  from: string;
  /** What is taken for what nobody said. */
  assumptions: Remark[];
}

/** Sheets of this engine with each other supercharger of the book. */
export async function otherSheets(
  book: Book,
  sheet: CombinationSheet,
): Promise<{ sheets: OtherSheet[]; remarks: Remark[] }> {
  const isBlown = isSupercharged(sheet);
  const known: Combination[] = [];
  // A unit stands as it was pulled, else as it was first entered: a planned rung has a pulley or a fuel of its own.
  const counts = await book.pullCounts();
  const isPulled = ({ id }: { id: string }) => (counts.get(id) ?? 0) > 0;
  const inOrder = (await book.combinationNames()).toReversed();
  for (const { id } of inOrder.toSorted((a, b) => Number(isPulled(b)) - Number(isPulled(a)))) {
    const one = await book.combination(id);
    if (one === null || !isSupercharged(one.sheet) || (isBlown && isSameUnit(one, sheet))) continue;
    if (!known.some((other) => isSameUnit(one, other.sheet))) known.push(one);
  }
  const sheets = known.map((one): OtherSheet => {
    const { supercharger, drive, cooler } = one.sheet.sections;
    const own = isBlown ? sheet.sections.cooler : cooler;
    return {
      id: `unit of ${one.id}`,
      name: nameOf(one, [sheet, ...known.filter((other) => other !== one).map((other) => other.sheet)]),
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

/** Two units of one name on their sheets are told apart by whose they are. */
function nameOf({ name, sheet }: Combination, others: readonly CombinationSheet[]): string {
  const unit = unitOf(sheet);
  const isShared = others.some((other) => unitOf(other)?.toLowerCase() === unit?.toLowerCase());
  if (unit === null) return `of “${name}”`;
  return isShared ? `${unit} of “${name}”` : unit;
}

const mapsWithoutDrive = (maps: readonly CompressorMap[]): Remark =>
  remark(
    'note',
    'maps-without-drive',
    `Not tried: ${maps.map(({ name }) => `"${name}"`).join(', ')}. The book has the map, but no combination says by what gears and pulleys it would be driven. Enter one.`,
  );
