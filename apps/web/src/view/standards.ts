import type { CorrectionId } from '@pullbook/core/air';

/** The standards to choose from, as printed. What each says of itself comes from the server with the figures. */
export const STANDARDS: readonly { value: CorrectionId; text: string }[] = [
  { value: 'observed', text: 'Observed, not corrected' },
  { value: 'sae-j1349', text: 'SAE J1349' },
  { value: 'sae-j607', text: 'SAE J607' },
  { value: 'iso-1585', text: 'ISO 1585' },
  { value: 'din-70020', text: 'DIN 70020' },
];

export function isCorrection(value: unknown): value is CorrectionId {
  return STANDARDS.some((standard) => standard.value === value);
}
