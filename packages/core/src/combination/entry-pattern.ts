import { foldedSpelling, type QuantityKind, unitsOfKind } from '../quantity/index.ts';

/** Signs that reading forgives between the words of a unit. */
const FORGIVEN = '[\\s()^·*.-]*';

const LOOK_ALIKES: Record<string, string> = { '2': '2²', '3': '3³', µ: 'µμ', μ: 'µμ', '°': '°º˚' };

const NUMBER = '[+\\-−–]?[0-9.,](?:[0-9.,\\s]*[0-9.,])?(?:[eE][+-]?[0-9]+)?';

const UNKNOWN = `${anyCase('unknown')}|${anyCase('not known')}|\\?|`;

/**
 * A regular expression, of the ECMAScript kind with the `u` flag, for what may be written where a quantity of these kinds is
 * due: all that reading takes and a little more, for whether a number could be two only reading tells. Case is forgiven, and
 * spaces and dots between the words of a unit; a unit with spaces inside a word (`m m`) is read but does not fit.
 */
export function entryPattern(kinds: readonly (QuantityKind | 'count')[]): string {
  const units = kinds.flatMap((kind) => (kind === 'count' ? [''] : unitPatterns(kind)));
  const named = [...new Set(units)].filter((unit) => unit !== '');
  const isBareEnough = units.includes('');
  const unit = named.length === 0 ? '' : `(?:${named.join('|')})${isBareEnough ? '?' : ''}`;
  return `^\\s*(?:${UNKNOWN}|${NUMBER}${FORGIVEN}${unit}${FORGIVEN})\\s*$`;
}

/** Every accepted spelling of the kind's units; '' where none is needed. */
function unitPatterns(kind: QuantityKind): string[] {
  const spellings = unitsOfKind(kind).flatMap((unit) => unit.spellings);
  return spellings.flatMap((spelling) => {
    const folded = foldedSpelling(spelling);
    // A spelling that is nothing but a sign stands for itself.
    if (!/[\p{L}\p{N}]/u.test(folded)) return [anyCase(folded)];
    const plain = spelling.normalize('NFKC');
    const words = plain.split(/[\s()^·⋅•∙*.-]+/u);
    const pattern = words
      .filter((word) => word !== '')
      .map(anyCase)
      .join(FORGIVEN);
    // One sign for a whole unit, `℃`, is read as the signs it stands for.
    return spelling.length === 1 && plain.length > 1 ? [pattern, spelling] : [pattern];
  });
}

function anyCase(text: string): string {
  return [...text]
    .map((sign) => {
      const alike = LOOK_ALIKES[sign];
      const [lower, upper] = [sign.toLowerCase(), sign.toUpperCase()];
      if (alike !== undefined) return `[${alike}]`;
      if (lower !== upper && upper.length === 1) return `[${lower}${upper}]`;
      return /[\\^$.*+?()[\]{}|/]/.test(sign) ? `\\${sign}` : sign;
    })
    .join('');
}
