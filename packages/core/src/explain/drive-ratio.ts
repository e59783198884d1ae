import type { CombinationSheet, SectionId } from '../combination/index.ts';

/** Impeller turns for one of the crank without slip, by the sheet; `null`: a pulley is not known. A missing step-up is none. */
export function driveRatio(sheet: CombinationSheet): number | null {
  const number = (section: SectionId, field: string) => sheet.sections[section]?.[field]?.value ?? null;
  const crank = number('drive', 'crankPulleyDiameter');
  const blower = number('drive', 'blowerPulleyDiameter');
  if (crank === null || blower === null || !(blower > 0)) return null;
  const stepUp = sheet.sections.supercharger?.stepUp;
  if (stepUp !== undefined && stepUp.value === null) return null;
  return (crank / blower) * (stepUp?.value ?? 1);
}
