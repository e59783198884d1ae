import { describe, expect, test } from 'vitest';
import { drawnStyle, PALETTE } from './palette.ts';
import { THEMES } from './theme.ts';

type Triple = [number, number, number];

/** Relative luminance and contrast ratio: WCAG 2.2, glossary entries of the same names. */
const linear = (hex: string): Triple =>
  [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as Triple;
const luminance = ([red, green, blue]: Triple) => 0.2126 * red + 0.7152 * green + 0.0722 * blue;
function contrast(one: string, other: string): number {
  const [darker = 0, lighter = 0] = [luminance(linear(one)), luminance(linear(other))].sort((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}

/** Full deuteranopia and protanopia in linear sRGB: Machado, Oliveira and Fernandes 2009, severity 1.0 (from memory). */
const DEUTERANOPIA: Triple[] = [
  [0.367322, 0.860646, -0.227968],
  [0.280085, 0.672501, 0.047413],
  [-0.01182, 0.04294, 0.968881],
];
const PROTANOPIA: Triple[] = [
  [0.152286, 1.052583, -0.204868],
  [0.114503, 0.786281, 0.099216],
  [-0.003882, -0.048116, 1.051998],
];
const seenWith = (matrix: Triple[], colour: Triple): Triple =>
  matrix.map((row) =>
    Math.min(1, Math.max(0, row[0] * colour[0] + row[1] * colour[1] + row[2] * colour[2])),
  ) as Triple;

/** Distance in OKLab (Ottosson 2020; coefficients from memory); about 0.02 is just noticeable side by side. */
function oklab([red, green, blue]: Triple): Triple {
  const long = Math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue);
  const medium = Math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue);
  const short = Math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue);
  return [
    0.2104542553 * long + 0.793617785 * medium - 0.0040720468 * short,
    1.9779984951 * long - 2.428592205 * medium + 0.4505937099 * short,
    0.0259040371 * long + 0.7827717662 * medium - 0.808675766 * short,
  ];
}
function distance(one: Triple, other: Triple): number {
  const [a, b] = [oklab(one), oklab(other)];
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

test('the measure of contrast knows black on white', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
});

describe.each(['light', 'dark'] as const)('%s', (name) => {
  const theme = THEMES[name];
  const grounds = [theme.paper, theme.card];

  test('every combination reads as a line and as a text on both grounds', () => {
    for (const combination of PALETTE) {
      for (const ground of grounds)
        expect(contrast(combination[name], ground), combination[name]).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('every text reads on its ground', () => {
    for (const ground of grounds) {
      for (const text of [theme.ink, theme.softInk])
        expect(contrast(text, ground)).toBeGreaterThanOrEqual(4.5);
    }
    expect(contrast(theme.ink, theme.quietChip)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(theme.cautionInk, theme.cautionChip)).toBeGreaterThanOrEqual(4.5);
  });

  test.each([
    ['full colour vision', null],
    ['deuteranopia', DEUTERANOPIA],
    ['protanopia', PROTANOPIA],
  ] as const)('combinations differ by colour alone with %s', (_, matrix) => {
    const seen = PALETTE.map((combination) => {
      const colour = linear(combination[name]);
      return matrix ? seenWith(matrix, colour) : colour;
    });
    seen.forEach((one, index) => {
      for (const [after, other] of seen.slice(index + 1).entries()) {
        expect(distance(one, other), `${index} and ${index + 1 + after}`).toBeGreaterThan(0.03);
      }
    });
    // The four that a picture for an audience holds at most differ plainly.
    seen.slice(0, 4).forEach((one, index, four) => {
      for (const other of four.slice(index + 1)) expect(distance(one, other)).toBeGreaterThan(0.07);
    });
  });
});

test('combinations differ by dash alone and by mark alone', () => {
  expect(new Set(PALETTE.map(({ dash }) => dash.join(' '))).size).toBe(PALETTE.length);
  expect(new Set(PALETTE.map(({ mark }) => mark)).size).toBe(PALETTE.length);
});

test('a combination that cannot be is refused', () => {
  expect(() => drawnStyle({ combination: -1 }, 'light')).toThrow('index starts at 0');
});
