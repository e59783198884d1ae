import { type QuantityKind, type Unit, unitFor } from '@pullbook/core/quantity';

/** Spellings met in files in other languages, and what they stand for in the closed table. */
const OTHER_LANGUAGES: Record<string, string> = {
  'u/min': 'rpm',
  upm: 'rpm',
  'tr/min': 'rpm',
  'tours/min': 'rpm',
  'giri/min': 'rpm',
  'rev min': 'rpm',
  grad: '°',
  '°kw': '°',
  'grad kw': '°',
  sek: 's',
};

/** Unit that a file's spelling stands for, `null` where it is none of the closed table. The empty text is no unit. */
export function unitOfSpelling(spelling: string, kind?: QuantityKind): Unit | null {
  const trimmed = spelling.trim();
  if (trimmed === '' || /^\d+$/.test(trimmed)) return null;
  const meant = OTHER_LANGUAGES[trimmed.toLowerCase()] ?? trimmed;
  return unitFor(meant, kind);
}

const UNIT_LIKE =
  /^(%.{0,3}|°.{0,4}|[a-zµΩ]{1,4}[\d²³]?([/·*. ][a-zµ]{1,4}[-\d²³]{0,2})+|psid|ppm|counts?|#|A|mA|Ω|ohm)$/iu;

/** Whether a text reads as a unit: one of the closed table, or of a unit's make, such as `g/kW*hr`. */
export function looksLikeUnit(text: string): boolean {
  const bare = text
    .trim()
    .replace(/^[[(](.*)[\])]$/s, '$1')
    .trim();
  if (bare === '' || bare.length > 16) return false;
  return unitOfSpelling(bare) !== null || (UNIT_LIKE.test(bare) && !/^[a-z]{3,} [a-z]{3,}/i.test(bare));
}
