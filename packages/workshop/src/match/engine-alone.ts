import {
  type CombinationSheet,
  type PartChange,
  type SectionId,
  whatChanged,
} from '@pullbook/core/combination';

/** Sections that come and go with a supercharger, or do not change what an engine swallows at full throttle. */
const BESIDE: readonly SectionId[] = [
  'supercharger',
  'drive',
  'cooler',
  'fuelSystem',
  'fuel',
  'ignition',
  'accessories',
];

/** Lines of the other sections that only say how the air was led to and from the engine, or what is known of that. */
const SAID_OF_THE_WAY: readonly string[] = [
  'intake.airFilter',
  'intake.filterLoss',
  'intake.filterLossFlow',
  'intake.throttleLoss',
  'intake.throttleLossFlow',
  'intake.carburettorFlow',
  'intake.carburettorFlowPressure',
  'exhaust.backPressure',
];

/** Lines that say what is known of a supercharger, not what it is. */
const KNOWN_OF_IT: readonly string[] = [
  'notes',
  'map',
  'ratedFlow',
  'ratedPressureRatio',
  'ratedSpeed',
  'ratedEfficiency',
  'maximumImpellerSpeed',
  'mechanicalEfficiency',
];

/**
 * What two combinations differ by in the engine itself: block, heads, cam, intake, exhaust. Nothing: what one swallows
 * without a supercharger the other does too.
 *
 * @example engineDifferences(baseCam.sheet, blownBaseCam.sheet) // []
 */
export function engineDifferences(before: CombinationSheet, after: CombinationSheet): PartChange[] {
  return whatChanged(before, after, []).filter((one) => !isBeside(one));
}

/** What two combinations differ by in supercharger, drive and cooler. */
export function superchargerDifferences(before: CombinationSheet, after: CombinationSheet): PartChange[] {
  return whatChanged(before, after, []).filter(
    ({ section, field }) =>
      !KNOWN_OF_IT.includes(field) &&
      (section === 'supercharger' || section === 'drive' || section === 'cooler'),
  );
}

/** Whether two lists of changes are the same change: the same lines, from the same to the same. */
export function isSameChange(one: readonly PartChange[], other: readonly PartChange[]): boolean {
  const textOf = (changes: readonly PartChange[]) =>
    changes.map(({ section, field, before, after }) => [section, field, before, after].join('\n')).sort();
  return textOf(one).join('\n\n') === textOf(other).join('\n\n');
}

const isBeside = ({ section, field }: PartChange): boolean =>
  field === 'notes' || BESIDE.includes(section) || SAID_OF_THE_WAY.includes(`${section}.${field}`);
