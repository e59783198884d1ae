import type { StillMeasures } from './still-shape.ts';
import { balanced, shortened, wrapped } from './text-width.ts';

/** Lines of one size. */
export interface SaidWords {
  lines: string[];
  sizePx: number;
}

const STEPS = 16;
/** On one line a headline may shrink this far towards its smallest; below that two larger lines read better. */
const ONE_LINE_SHRINK = 0.6;
const BETWEEN = ' · ';

/** The headline in as few lines as can be: as large as possible on one, then on more, then cut. */
export function headlineIn(text: string, widthPx: number, room: StillMeasures['headline']): SaidWords {
  const { largest, smallest, lines: mostLines } = room;
  for (let most = 1; most <= mostLines; most += 1) {
    for (let step = 0; step <= STEPS; step += 1) {
      const shrink = step / STEPS;
      if (most === 1 && mostLines > 1 && shrink > ONE_LINE_SHRINK) break;
      const sizePx = largest - shrink * (largest - smallest);
      if (wrapped(text, widthPx, sizePx, 'serifStrong').length <= most)
        return { lines: balanced(text, widthPx, sizePx, 'serifStrong'), sizePx };
    }
  }
  const lines = wrapped(text, widthPx, smallest, 'serifStrong');
  const rest = shortened(lines.slice(mostLines - 1).join(' '), widthPx, smallest, 'serifStrong');
  return { lines: [...lines.slice(0, mostLines - 1), rest], sizePx: smallest };
}

/** Where a sentence may end before its end: after a clause, but not within brackets or quotes nor between a key and its name. */
const CLAUSE = /(?<!\b\p{Lu})[,:;.](?= (?![^(]*\))(?![^“]*”))/gu;
/** A clause that is left alone has to have this share of what had room: less says too little. */
const LEAST_CLAUSE = 0.55;
/** Parts of so many signs are not broken. */
const SHORT_PART = 18;

/** A text in at most so many lines: cut after a clause, or with an ellipsis where that says too little. */
export function linesIn(text: string, widthPx: number, sizePx: number, most: number): string[] {
  if (text === '' || most < 1) return [];
  const lines = balanced(text, widthPx, sizePx, 'sans');
  if (lines.length <= most) return lines.map(withoutDots);
  const whole = wrapped(text, widthPx, sizePx, 'sans');
  const rest = shortened(whole.slice(most - 1).join(' '), widthPx, sizePx, 'sans');
  const cut = [...whole.slice(0, most - 1), rest].map(withoutDots);
  const fits = (part: string) => wrapped(part, widthPx, sizePx, 'sans').length <= most;
  const clause = clauseThatFits(text, fits, LEAST_CLAUSE * cut.join(' ').length);
  if (clause !== null) return balanced(clause, widthPx, sizePx, 'sans').map(withoutDots);
  // A bracket that is not shut would be half a band.
  const bracket = rest.lastIndexOf('(');
  const isOpen = bracket > 0 && !rest.slice(bracket).includes(')');
  return isOpen ? [...cut.slice(0, -1), `${rest.slice(0, bracket).trim()}…`] : cut;
}

/** A sentence up to its last clause that fits; `null`: what is left would be shorter than asked. */
export function clauseThatFits(
  text: string,
  fits: (part: string) => boolean,
  leastLength: number,
): string | null {
  const clauses = [...text.matchAll(CLAUSE)].map(({ index }) => text.slice(0, index));
  const clause = clauses.findLast(fits);
  return clause === undefined || clause.length < leastLength ? null : clause;
}

/**
 * Texts of parts with dots between, in at most so many lines: each on lines of its own if there is room, else run on. What finds
 * no room is left out in whole parts: the longest text's last one first, and so on in turn; but the very last part stays,
 * since that is where `invented data` stands. An ellipsis takes their place. `last`: parts leave from the end and without a sign.
 */
export function partsIn(
  texts: string[],
  widthPx: number,
  sizePx: number,
  most: number,
  leaving: 'last' | 'before the last' = 'before the last',
): string[] {
  const separate = texts.flatMap((text) => balanced(partsHeld(text), widthPx, sizePx, 'sans'));
  const fit = (all: string[][], isCut: boolean) => {
    const parts = all.flat();
    const words = isCut ? [...parts.slice(0, -1), '…', ...parts.slice(-1)] : parts;
    return wrapped(words.join(BETWEEN), widthPx, sizePx, 'sans').map(withoutDots);
  };
  const kept = texts.filter(Boolean).map((text) => text.split(BETWEEN).map(unbroken));
  const running = fit(kept, false);
  const fewer = running.length < separate.length ? running : separate.map(withoutDots);
  if (fewer.length <= most) return fewer;
  const final = leaving === 'last' ? undefined : kept.at(-1)?.pop();
  const last = final === undefined ? [] : [final];
  for (let left = kept.flat().length; left > 0; left -= 1) {
    const longest = kept.reduce((long, one) => (one.length >= long.length ? one : long));
    longest.pop();
    if (leaving === 'last' && kept.flat().length === 0) break;
    const lines = fit([...kept, last], leaving !== 'last');
    if (lines.length <= most) return lines;
  }
  return linesIn(last[0] ?? texts[0]?.split(BETWEEN)[0] ?? '', widthPx, sizePx, most);
}

/** The same text, with its short parts unbroken. */
export const partsHeld = (text: string): string => text.split(BETWEEN).map(unbroken).join(BETWEEN);

/** A short part is read as one: its spaces do not break. */
const unbroken = (part: string): string => (part.length > SHORT_PART ? part : part.replaceAll(' ', '\u00a0'));

/** A line neither begins nor ends with the dot between two parts. */
export const withoutDots = (line: string): string => line.replace(/^· | ·$/gu, '');
