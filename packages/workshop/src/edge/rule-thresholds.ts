import { parseQuantity } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { isSettable, RULES, type RuleThresholds, thresholdNamed } from '@pullbook/core/rule';

/**
 * The shop's own thresholds from JSON (`{"V17.duty": 0.9}`, inside units, or texts with units) or from its text as a person writes it
 * on the command line (`V17.duty=90 %, V39.oil=9 psi`).
 */
export function ruleThresholdsFrom(given: unknown): Result<RuleThresholds> {
  const entries =
    typeof given === 'string'
      ? given.split(/[,;]\s*(?=V\d)/i).map((part) => splitAtEquals(part))
      : typeof given === 'object' && given !== null
        ? Object.entries(given)
        : null;
  if (entries === null)
    return refused(remark('refusal', 'setting', `Setting ruleThresholds: write them as V17.duty=90 %.`));
  const values: [id: string, value: number][] = [];
  const remarks: Remark[] = [];
  for (const [id, value] of entries) {
    const read = thresholdFrom(id, value);
    if (read.ok) values.push([read.value.id, read.value.value]);
    else remarks.push(...read.remarks);
  }
  const [first, ...others] = remarks;
  return first ? refused(first, ...others) : accepted(Object.fromEntries(values));
}

function splitAtEquals(part: string): [id: string, value: string] {
  const [id = '', ...value] = part.split('=');
  return [id.trim(), value.join('=').trim()];
}

/** One threshold by its id with its value: a number of the inside unit, or a text with its unit. */
export function thresholdFrom(givenId: string, given: unknown): Result<{ id: string; value: number }> {
  const wanted = givenId.trim().toLowerCase();
  const id = RULES.flatMap(({ thresholds }) => thresholds).find((one) => one.id.toLowerCase() === wanted)?.id;
  const threshold = id === undefined ? null : thresholdNamed(id);
  if (threshold === null)
    return refused(
      remark(
        'refusal',
        'unknown-threshold',
        `There is no threshold "${givenId}". "pullbook rules" lists them with their ids.`,
      ),
    );
  if (!isSettable(threshold.id))
    return refused(
      remark(
        'refusal',
        'threshold-fixed',
        `${threshold.id} (${threshold.label}) is drawn where the figures are made and cannot be set here.`,
      ),
    );
  const read =
    typeof given === 'string' ? parseQuantity(given, threshold.kind, { decimalMark: 'either' }) : null;
  if (read !== null && !read.ok) return read;
  const value = read === null ? given : read.value;
  return typeof value === 'number' && Number.isFinite(value)
    ? accepted({ id: threshold.id, value })
    : refused(
        remark(
          'refusal',
          'setting',
          `${threshold.id} (${threshold.label}): a number with its unit is needed.`,
        ),
      );
}
