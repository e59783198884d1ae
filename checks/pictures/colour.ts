/** Colours as the eye has them, by published formulas, apart from the program's own drawing. */

export type Triple = readonly [number, number, number];

/** Linear sRGB, 0 to 1, of `#rrggbb`: IEC 61966-2-1, as WCAG 2.2 quotes it under `relative luminance`. */
export const linear = (hex: string): Triple => {
  const channel = (at: number) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
};

/** WCAG 2.2, glossary: relative luminance. */
export const luminance = ([red, green, blue]: Triple): number =>
  0.2126 * red + 0.7152 * green + 0.0722 * blue;

/** WCAG 2.2, glossary: contrast ratio, 1 to 21. */
export function contrast(one: Triple, other: Triple): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/** A colour of some opacity over another: mixed in sRGB as programs that draw do, given and got as `#rrggbb`. */
export function over(top: string, opacity: number, ground: string): string {
  const mixed = [1, 3, 5].map((at) => {
    const [a, b] = [top, ground].map((hex) => Number.parseInt(hex.slice(at, at + 2), 16)) as [number, number];
    return Math.round(opacity * a + (1 - opacity) * b)
      .toString(16)
      .padStart(2, '0');
  });
  return `#${mixed.join('')}`;
}

/**
 * G. M. Machado, M. M. Oliveira, L. A. F. Fernandes: A physiologically-based model for simulation of color vision deficiency,
 * IEEE Trans. Visualization and Computer Graphics 15 (2009), table of matrices, severity 1.0, on linear sRGB. Typed from memory;
 * the same figures stand in several public programs.
 */
export const SEEN_WITH: Record<'protanopia' | 'deuteranopia' | 'tritanopia', readonly Triple[]> = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

export function seenWith(kind: keyof typeof SEEN_WITH, colour: Triple): Triple {
  const seen = SEEN_WITH[kind].map((row) => {
    const value = row[0] * colour[0] + row[1] * colour[1] + row[2] * colour[2];
    return Math.min(1, Math.max(0, value));
  });
  return seen as unknown as Triple;
}

/** CIE L*a*b* under D65: IEC 61966-2-1 matrix (four decimals), CIE 15 formula. */
export function lab([red, green, blue]: Triple): Triple {
  const bent = (share: number) =>
    share > (6 / 29) ** 3 ? Math.cbrt(share) : share / (3 * (6 / 29) ** 2) + 4 / 29;
  const x = bent((0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505);
  const y = bent(0.2126 * red + 0.7152 * green + 0.0722 * blue);
  const z = bent((0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** Hue angle, degrees from 0 to 360. */
const hue = (b: number, a: number) =>
  a === 0 && b === 0 ? 0 : ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;

/**
 * Colour difference CIEDE2000: CIE 142-2001, as G. Sharma, W. Wu, E. N. Dalal write it out step by step (Color Research and
 * Application 30, 2005); held against their table beside this.
 */
export function ciede2000([l1, a1, b1]: Triple, [l2, a2, b2]: Triple): number {
  const meanChroma = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
  const stretch = 1 + 0.5 * (1 - Math.sqrt(meanChroma ** 7 / (meanChroma ** 7 + 25 ** 7)));
  const [c1, c2] = [Math.hypot(stretch * a1, b1), Math.hypot(stretch * a2, b2)];
  const [h1, h2] = [hue(b1, stretch * a1), hue(b2, stretch * a2)];
  const isGrey = c1 * c2 === 0;
  const turn = Math.abs(h2 - h1) <= 180 ? h2 - h1 : h2 - h1 + (h2 > h1 ? -360 : 360);
  const hueStep = 2 * Math.sqrt(c1 * c2) * Math.sin(radians(isGrey ? 0 : turn) / 2);
  const sum = h1 + h2;
  const half = Math.abs(h1 - h2) <= 180 ? sum / 2 : sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  const h = isGrey ? sum : half;
  const [l, c] = [(l1 + l2) / 2, (c1 + c2) / 2];
  const t =
    1 -
    0.17 * Math.cos(radians(h - 30)) +
    0.24 * Math.cos(radians(2 * h)) +
    0.32 * Math.cos(radians(3 * h + 6)) -
    0.2 * Math.cos(radians(4 * h - 63));
  const lightness = (l2 - l1) / (1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2));
  const chroma = (c2 - c1) / (1 + 0.045 * c);
  const hueDifference = hueStep / (1 + 0.015 * c * t);
  const turned =
    -2 * Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7)) * Math.sin(radians(60 * Math.exp(-(((h - 275) / 25) ** 2))));
  return Math.sqrt(lightness ** 2 + chroma ** 2 + hueDifference ** 2 + turned * chroma * hueDifference);
}
