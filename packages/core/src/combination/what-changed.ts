import { fieldNamed } from './fields.ts';
import type { CombinationSheet, Package, PartChange, SectionId, SheetValue } from './model.ts';
import { sectionTitle } from './sections.ts';
import { sheetValue } from './sheet-number.ts';
import { tableDifference } from './table-difference.ts';

/** Equal values in other units differ by the rounding of a division, no more. */
const SAME_VALUE = 1e-9;

/**
 * The lines in which two sheets differ, in the order of the first sheet and then of what the second one adds.
 *
 * Equal values in other units (96 mm, 9.6 cm), other capitals and another origin are no change; unknown against known is
 * one, since the hardware may differ; unknown against nothing written is none. `packages`: those fitted on either side;
 * a line covered by one carries its name, a covered field before a covered section.
 */
export function whatChanged(
  before: CombinationSheet,
  after: CombinationSheet,
  packages: Package[],
): PartChange[] {
  const changes: PartChange[] = [];
  for (const section of unionOfKeys(before.sections, after.sections) as SectionId[]) {
    for (const field of unionOfKeys(before.sections[section], after.sections[section])) {
      const left = sheetValue(before, section, field);
      const right = sheetValue(after, section, field);
      if (isSame(left, right)) continue;
      const difference =
        left?.table && right?.table ? tableDifference(left.table, right.table, isSame) : null;
      changes.push({
        section,
        field,
        label: labelOf(section, field, before, after),
        before: left?.text ?? null,
        after: difference === null ? (right?.text ?? null) : `${right!.text}, ${difference}`,
        packageName: packageCovering(section, field, packages),
      });
    }
  }
  return changes;
}

function isSame(left: SheetValue | null, right: SheetValue | null): boolean {
  if (isNotKnown(left) || isNotKnown(right)) return isNotKnown(left) && isNotKnown(right);
  if (left!.table && right!.table) return tableDifference(left!.table, right!.table, isSame) === null;
  if (left!.value !== null && right!.value !== null && left!.kind === right!.kind) {
    const scale = Math.max(Math.abs(left!.value), Math.abs(right!.value));
    return Math.abs(left!.value - right!.value) <= SAME_VALUE * scale;
  }
  return plainText(left!.text) === plainText(right!.text);
}

const isNotKnown = (value: SheetValue | null) => value === null || value.text === 'unknown';

const plainText = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ');

/** `Cam, intake duration at 1 mm`: durations say at which lift, where both sheets tell the same. */
function labelOf(
  section: SectionId,
  field: string,
  before: CombinationSheet,
  after: CombinationSheet,
): string {
  const known = fieldNamed(section, field);
  const name = known ? known.label.charAt(0).toLowerCase() + known.label.slice(1) : field;
  const label = `${sectionTitle(section)}, ${name}`;
  if (section !== 'cam' || (field !== 'durationIntake' && field !== 'durationExhaust')) return label;
  const left = sheetValue(before, 'cam', 'durationLift');
  const right = sheetValue(after, 'cam', 'durationLift');
  return left?.value != null && isSame(left, right) ? `${label} at ${left.text}` : label;
}

function packageCovering(section: SectionId, field: string, packages: Package[]): string | null {
  const covering = (what: string) => packages.find(({ covers }) => covers.includes(what))?.name;
  return covering(`${section}.${field}`) ?? covering(section) ?? null;
}

function unionOfKeys(left: object | undefined, right: object | undefined): string[] {
  return [...new Set([...Object.keys(left ?? {}), ...Object.keys(right ?? {})])];
}
