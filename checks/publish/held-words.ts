import { figuresIn, readFigure } from './curves-of-svg.ts';
import type { ReadFile } from './read-files.ts';
import { allOf, numberOf, readSvg } from './read-svg.ts';

/** What the factors are known to. */
const RELATIVE = 1e-6;
const MOST_IN_HEADLINE = 4;

/** A figure as drawn is what the exact one rounds to at as many decimals. */
function rounds(text: string | undefined, exact: number, mark: '.' | ','): boolean {
  const drawn = readFigure(text ?? '', mark);
  const decimals = mark === '.' && !text?.includes('.') ? 0 : (text?.split(mark)[1]?.length ?? 0);
  return drawn !== null && Math.abs(drawn - exact) <= 0.5 * 10 ** -decimals + RELATIVE * Math.abs(exact);
}

/** Each row of a card of speeds against the curve at its speed, cells read by their place in the drawing. */
export function heldRows({ name, svg, numbers }: ReadFile, mark: '.' | ',', perKw: number) {
  const key = /-table-([b-h])-/u.exec(name)?.[1]?.toUpperCase() ?? 'B';
  const { curve } = numbers.comparisons.find((one) => one.key === key)!;
  const rows = new Map<string, { x: number; text: string }[]>();
  for (const element of allOf(readSvg(svg)).filter(({ tag }) => tag === 'text')) {
    const y = element.attributes.y!;
    rows.set(y, [...(rows.get(y) ?? []), { x: numberOf(element, 'x'), text: element.text }]);
  }
  const wrong: string[] = [];
  let held = 0;
  for (const cells of rows.values()) {
    const [speed, ...figures] = cells.toSorted((a, b) => a.x - b.x).map(({ text }) => text);
    const at = curve.find(({ engineSpeedRpm }) => readFigure(speed ?? '', mark) === engineSpeedRpm);
    if (at === undefined || figures.length !== 4) continue;
    const [from, to, gain] = [at.baselineKw!, at.changedKw!, at.gainKw!];
    for (const [place, exact] of [from * perKw, to * perKw, gain * perKw, (100 * gain) / from].entries()) {
      if (!rounds(figures[place], exact, mark))
        wrong.push(`${name}: ${speed}: ${figures[place]} for ${exact}`);
      held += 1;
    }
  }
  return { wrong, held };
}

/** Highest powers in the words of the power's picture. */
export function heldPeaks({ name, texts, numbers }: ReadFile, mark: '.' | ',', perKw: number) {
  if (numbers.combinations.length > MOST_IN_HEADLINE) return { wrong: [], held: 0 };
  const figures = figuresIn(texts.join(' '), mark);
  const peaks = numbers.combinations.flatMap(({ peakPowerKw }) =>
    peakPowerKw === null ? [] : [peakPowerKw * perKw],
  );
  const wrong = peaks.filter(
    (exact) => !figures.some((one) => Math.abs(one - exact) <= 0.5 + RELATIVE * exact),
  );
  return { wrong: wrong.map((one) => `${name}: no ${one}`), held: peaks.length };
}

/** The one gain that the answer's words claim. */
export function heldClaim({ name, texts, numbers }: ReadFile, mark: '.' | ',', perKw: number) {
  const [only, ...others] = numbers.comparisons;
  const claimed = /\b(?:adds|costs)[\s\u00a0]([\d.,\u202f]+)/u.exec(texts.join(' '))?.[1];
  if (only === undefined || others.length > 0 || claimed === undefined) return { wrong: [], held: 0 };
  const exact = Math.abs(only.meanGainKw) * perKw;
  return { wrong: rounds(claimed, exact, mark) ? [] : [`${name}: ${claimed} for ${exact}`], held: 1 };
}
