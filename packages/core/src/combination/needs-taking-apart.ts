import type { PartChange, SectionId } from './model.ts';

/** A thing that is changed while the engine stays together on the brake. */
export interface ChangedOnTheBrake {
  section: SectionId;
  /** `null`: every line of the section. */
  field: string | null;
  /** Why it needs no taking apart. Common practice, no source. */
  why: string;
}

/**
 * What is changed on the brake without taking the engine apart, so that the change brings no scatter of a new set-up.
 * Whatever is not here counts as taken apart: the careful side, since that widens the band. Common practice, no source.
 */
export const CHANGED_ON_THE_BRAKE: readonly ChangedOnTheBrake[] = [
  { section: 'drive', field: 'crankPulleyDiameter', why: 'A pulley is unbolted from outside.' },
  { section: 'drive', field: 'blowerPulleyDiameter', why: 'A pulley is unbolted from outside.' },
  { section: 'drive', field: 'beltRibs', why: 'A belt goes off and on with its tensioner.' },
  { section: 'drive', field: 'beltWidth', why: 'A belt goes off and on with its tensioner.' },
  { section: 'drive', field: 'tensioner', why: 'The tensioner is set or changed from outside.' },
  { section: 'drive', field: 'notes', why: 'Words about pulleys and belt, both changed from outside.' },
  { section: 'fuel', field: null, why: 'Fuel is changed at the tank.' },
  { section: 'fuelSystem', field: 'regulator', why: 'Fuel pressure is set from outside.' },
  { section: 'fuelSystem', field: 'fuelPressure', why: 'Fuel pressure is set from outside.' },
  { section: 'ignition', field: 'plugs', why: 'Plugs are screwed in from outside.' },
  { section: 'ignition', field: 'plugGap', why: 'Plugs are screwed in from outside.' },
  { section: 'intake', field: 'airFilter', why: 'The filter is slipped on before everything else.' },
  { section: 'supercharger', field: 'bypass', why: 'The bypass valve is changed or set from outside.' },
  { section: 'cooler', field: 'coolant', why: 'Water or ice of the cooler is changed at its tank.' },
  { section: 'accessories', field: 'oil', why: 'Oil is drained and filled from outside.' },
];

/**
 * Whether a change of hardware takes the engine apart, so that it brings the scatter of a new set-up. Holds for what the
 * sheets tell; nothing changed needs none.
 *
 * @example needsTakingApart(whatChanged(base, smallerPulley, [])) // false
 */
export const needsTakingApart = (changes: readonly PartChange[]): boolean =>
  changes.some((change) => !isChangedOnTheBrake(change));

const isChangedOnTheBrake = ({ section, field }: PartChange): boolean =>
  CHANGED_ON_THE_BRAKE.some((one) => one.section === section && (one.field === null || one.field === field));
