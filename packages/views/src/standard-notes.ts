import { type CorrectionId, correctionById } from '@pullbook/core/air';

/** What a standard says of itself, and of supercharged engines where one is shown. */
export function standardNotes(id: CorrectionId, supercharged: boolean): string[] {
  const standard = correctionById(id);
  if (!standard) return [];
  const reference = `${standard.name}: ${standard.referenceState}`;
  return supercharged ? [reference, standard.supercharged] : [reference];
}
