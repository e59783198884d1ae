import {
  type CombinationSheet,
  isSupercharged,
  type SectionId,
  type SheetValue,
  sheetValue,
} from '@pullbook/core/combination';
import type { CostClass, Ground, ReachBuild, ReachChange, SheetEdit } from '@pullbook/core/reach';
import { said } from '@pullbook/core/remark';

/** Sections that come and go with a supercharger. */
const OF_A_SUPERCHARGER: readonly SectionId[] = ['supercharger', 'drive', 'cooler'];

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
  const added = said`Supercharger ${name}`;
  const changed = said`${added} in place of ${unitOf(before) ?? 'the one fitted'}`;
  return {
    part: 'supercharger',
    said: isSupercharged(before) ? changed : added,
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
