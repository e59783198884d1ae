import { escaped } from '@pullbook/charts';
import { NUMBERS_NAME } from './names.ts';
import { plainOf } from './plain-of.ts';

/** An SVG with its numbers as JSON in an element for them, which nothing draws. */
export function withSvgNumbers(svg: string, numbers: unknown): string {
  const open = svg.indexOf('>') + 1;
  const block = `<metadata id="${NUMBERS_NAME}">${escaped(JSON.stringify(numbers))}</metadata>`;
  return svg.slice(0, open) + block + svg.slice(open);
}

/** The JSON text laid into an SVG; `null`: none. */
export function svgNumbers(svg: string): string | null {
  const match = new RegExp(`<metadata id="${NUMBERS_NAME}">([^<]*)</metadata>`, 'u').exec(svg);
  return match === null ? null : plainOf(match[1]!);
}

/** Every text that an SVG of ours draws, in its order. */
export const svgTexts = (svg: string): string[] =>
  [...svg.matchAll(/<text\b[^>]*>([^<]*)<\/text>/gu)].map(([, text]) => plainOf(text!));
