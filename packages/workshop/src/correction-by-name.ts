import { CORRECTIONS, type CorrectionId, correctionById } from '@pullbook/core/air';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';

/** The correction a person names; refused with the list. */
export function correctionByName(name: string): Result<CorrectionId> {
  const found = correctionById(name);
  if (found) return accepted(found.id);
  const known = Object.values(CORRECTIONS).map((one) => `${one.id} (${one.name})`);
  return refused(
    remark(
      'refusal',
      'unknown-correction',
      `"${name}" is not a correction Pullbook knows. Accepted: ${known.join(', ')}.`,
    ),
  );
}
