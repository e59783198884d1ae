import {
  type Combination,
  deriveFigures,
  type Engine,
  fieldNamed,
  isSupercharged,
  type Package,
  remarksOnSheet,
  SECTIONS,
  type SheetValue,
  whatChanged,
} from '@pullbook/core/combination';
import { type Finding, remarksBeside } from '@pullbook/core/rule';
import { inventedChips } from './chips.ts';
import { findingGroups } from './findings.ts';
import type { Chip, CombinationPage, PullRow, ViewOptions } from './model.ts';
import { shownRemarks } from './remarks.ts';
import { sheetTable, tableDetails } from './sheet-table.ts';
import { type Showing, showingIn } from './showing.ts';

export interface CombinationPageInput {
  combination: Combination;
  engine: Engine;
  /** The combination this one was made from; `null`: none. */
  madeFrom: Combination | null;
  /** All packages fitted on either side. */
  packages: Package[];
  pulls: PullRow[];
  /** The sheet as YAML. */
  sheetText: string;
  /** What the rules say of the sheet. */
  findings?: readonly Finding[];
  /** Of the compressor map that the sheet names; missing: the book has none of that name. */
  mapId?: string | undefined;
}

/** Engine speed at which piston speed is told, r/min: common practice for a road engine's upper end, no source. */
const PISTON_SPEED_AT_RPM = 6500;

/** The hardware as built, on one readable sheet. */
export function combinationPage(input: CombinationPageInput, options: ViewOptions): CombinationPage {
  const { combination, engine, madeFrom, packages, pulls, sheetText, findings = [], mapId = null } = input;
  const show = showingIn(options);
  const changes = madeFrom ? whatChanged(madeFrom.sheet, combination.sheet, packages) : [];
  return {
    id: combination.id,
    name: combination.name,
    engineName: [engine.name, engine.buildRevision].filter(Boolean).join(', '),
    revision: combination.revision,
    chips: chips(combination, pulls),
    sections: sectionsOf(combination, show),
    derived: derivedOf(combination, show),
    madeFrom: madeFrom ? { id: madeFrom.id, name: madeFrom.name } : null,
    changes: changes.map(({ label, before, after, packageName }) => ({
      label,
      before: before ?? 'not on the sheet',
      after: after ?? 'not on the sheet',
      packageName,
    })),
    packages: packages.filter(({ id }) => combination.packageIds.includes(id)).map(({ name }) => name),
    isSupercharged: isSupercharged(combination.sheet),
    map: mapOf(combination, mapId),
    pulls,
    sheetText,
    findings: findingGroups(findings, new Map(), options),
    remarks: shownRemarks(remarksBeside(remarksOnSheet(combination.sheet), findings), options),
  };
}

function mapOf({ sheet }: Combination, id: string | null): CombinationPage['map'] {
  const name = sheet.sections.supercharger?.map?.text;
  return name === undefined ? null : { name, id };
}

function chips(combination: Combination, pulls: PullRow[]): Chip[] {
  const own: Chip[] = pulls.length === 0 ? [{ text: 'Never pulled', tone: 'caution' }] : [];
  if (combination.revision > 1)
    own.push({ text: `Amended, revision ${combination.revision}`, tone: 'quiet' });
  return [...own, ...inventedChips(combination.invented)];
}

/** Sections in the order a sheet is best read, fields as they were written. */
function sectionsOf({ sheet }: Combination, show: Showing): CombinationPage['sections'] {
  return SECTIONS.flatMap(({ id, title }) => {
    const fields = Object.entries(sheet.sections[id] ?? {});
    if (fields.length === 0) return [];
    return [
      {
        title,
        rows: fields.map(([field, value]) => {
          const label = fieldNamed(id, field)?.label ?? field;
          const { table } = value;
          return {
            label,
            text: value.text,
            origin: value.origin === 'not stated' ? '' : value.origin,
            unknown: isUnknown(value),
            ...(table === undefined
              ? {}
              : {
                  table: sheetTable(sheet, field, label, { ...value, table }, show),
                  details: tableDetails(field, table),
                }),
          };
        }),
      },
    ];
  });
}

const isUnknown = ({ text }: SheetValue): boolean => text === 'unknown';

function derivedOf({ sheet }: Combination, show: Showing): CombinationPage['derived'] {
  return deriveFigures(sheet, PISTON_SPEED_AT_RPM).map(({ label, value, kind, from, missing }) => ({
    label,
    value: value === null ? 'not known' : show.quantity(value, kind),
    from: missing ?? from,
  }));
}
