/** Scripts whose signs fill a square, and whose lines may break between any two of them. */
const SQUARE =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\u3000-\u303f\uff00-\uff60]/u;
/** Signs that stand over or under the one before, or only steer it. */
const WITHOUT_ROOM = /[\p{Mn}\p{Me}\p{Cf}\p{Cc}]/u;
const PICTURE = /\p{Extended_Pictographic}|\p{Regional_Indicator}/u;
/** Never at the beginning of a line: what closes, and what prolongs the sign before. */
const CLOSING =
  /[\u3001\u3002\uff0c\uff0e\uff01\uff1f\uff1a\uff1b\uff09\u300d\u300f\u3011\u3009\u300b\u30fc\u3005]/u;
const OPENING = /[\uff08\u300c\u300e\u3010\u3008\u300a]/u;

/**
 * Room for a sign that no shipped font has, in em: whichever font draws it in the end, it should not run into what
 * stands beside it. Most scripts take less.
 */
export function roomOfUnknown(sign: string): number {
  if (WITHOUT_ROOM.test(sign)) return 0;
  return PICTURE.test(sign) ? 1.3 : 1;
}

/** A figure, or a combination's key: without what follows it says nothing. */
const HOLDS_ON = /^(?:\p{Lu}|[+−±]?\d[\d.,]*)$/u;
/** More signs than these are broken all the same. */
const MOST_HELD = 22;

/** Words, some of them held together that look broken apart: `14 March`, `B 2 pulls`, `(3 to 28)`. */
function heldTogether(words: string[]): string[] {
  const groups: string[] = [];
  let isOpen = false;
  for (const word of words) {
    const group = groups.at(-1);
    const before = group?.split(' ').at(-1) ?? '';
    const holds = group !== undefined && (isOpen || HOLDS_ON.test(before));
    if (holds && group.length + 1 + word.length <= MOST_HELD && !SQUARE.test(word))
      groups[groups.length - 1] = `${group} ${word}`;
    else groups.push(word);
    isOpen = (isOpen || word.startsWith('(')) && !word.includes(')');
  }
  return groups;
}

/**
 * What of a text should not be broken: words between spaces, a few of them where they belong together, and single signs of scripts
 * that are written without.
 */
export function unbreakable(text: string): { part: string; spaceBefore: boolean }[] {
  return heldTogether(text.split(/ +/u).filter((word) => word !== '')).flatMap((word) => {
    if (!SQUARE.test(word)) return [{ part: word, spaceBefore: true }];
    const parts: string[] = [];
    for (const sign of word) {
      const before = parts.at(-1);
      const lastSign = before === undefined ? '' : [...before].at(-1)!;
      const mayBreak =
        before === undefined ||
        ((SQUARE.test(sign) || SQUARE.test(lastSign)) &&
          !CLOSING.test(sign) &&
          !OPENING.test(lastSign) &&
          !WITHOUT_ROOM.test(sign));
      if (mayBreak) parts.push(sign);
      else parts[parts.length - 1] = before + sign;
    }
    return parts.map((part, index) => ({ part, spaceBefore: index === 0 }));
  });
}
