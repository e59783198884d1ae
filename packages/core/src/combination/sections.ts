import type { SectionId } from './model.ts';

/** The sections of a combination sheet, in the order a sheet is best read. */
export const SECTIONS: readonly { id: SectionId; title: string }[] = [
  { id: 'shortBlock', title: 'Short block' },
  { id: 'heads', title: 'Heads' },
  { id: 'cam', title: 'Cam' },
  { id: 'intake', title: 'Intake' },
  { id: 'exhaust', title: 'Exhaust' },
  { id: 'fuelSystem', title: 'Fuel system' },
  { id: 'fuel', title: 'Fuel' },
  { id: 'ignition', title: 'Ignition' },
  { id: 'supercharger', title: 'Supercharger' },
  { id: 'drive', title: 'Drive' },
  { id: 'cooler', title: 'Cooler' },
  { id: 'accessories', title: 'Accessories' },
];

/** Title of a section as shown: `sectionTitle('shortBlock')` is `Short block`. */
export function sectionTitle(id: SectionId): string {
  return SECTIONS.find((section) => section.id === id)!.title;
}
