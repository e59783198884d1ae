/** How a still is laid out: by the shape of its frame, and small ones for lists of videos by their size too. */
export type StillShape = 'wide' | 'square' | 'tall' | 'thumbnail';

const WIDE_FROM = 1.25;
const TALL_TO = 0.8;
/** A wide still no higher than this is looked at in a list of videos, at a quarter of its size. */
const THUMBNAIL_HEIGHT = 720;

/**
 * The shape of a frame, px.
 *
 * @example stillShape({ width: 1080, height: 1920 }) // 'tall'
 */
export function stillShape({ width, height }: { width: number; height: number }): StillShape {
  const ratio = width / height;
  if (ratio < TALL_TO) return 'tall';
  if (ratio < WIDE_FROM) return 'square';
  return height <= THUMBNAIL_HEIGHT ? 'thumbnail' : 'wide';
}

/** Sizes of a still's parts, px. */
export interface StillMeasures {
  shape: StillShape;
  /** Ordinary text, and the least size of any. */
  text: number;
  margin: number;
  headline: { largest: number; smallest: number; lines: number };
  subline: { size: number; lines: number };
  /** What the words round the picture leave to it at least. */
  leastBody: number;
  mostFooterLines: number;
}

/** Shares of the height (wide, thumbnail) or of the width (square, tall), but for the body's: of the height. */
interface Shares {
  text: number;
  margin: number;
  headline: [largest: number, smallest: number, lines: number];
  subline: [size: number, lines: number];
  leastBody: number;
  mostFooterLines: number;
}

/**
 * A wide still is read on a telephone held across: nothing below three hundredths of its height. A tall one
 * fills a telephone that moves on by itself: nothing below 48 of 1080; a square one, which stands still, nothing below 40, so that its
 * curves have half of it. A thumbnail is read at 360 px wide: nothing below 12 px there, and no
 * subline. Common
 * practice, no source.
 */
const SHARES: Record<StillShape, Shares> = {
  wide: {
    text: 0.0305,
    margin: 0.05,
    headline: [0.062, 0.045, 2],
    subline: [0.033, 2],
    leastBody: 0.5,
    mostFooterLines: 6,
  },
  square: {
    text: 0.0371,
    margin: 0.042,
    headline: [0.066, 0.05, 3],
    subline: [0.0371, 2],
    leastBody: 0.54,
    mostFooterLines: 5,
  },
  tall: {
    text: 0.0446,
    margin: 0.055,
    headline: [0.082, 0.056, 4],
    subline: [0.0446, 3],
    leastBody: 0.52,
    mostFooterLines: 8,
  },
  thumbnail: {
    text: 0.06,
    margin: 0.06,
    headline: [0.105, 0.075, 2],
    subline: [0.06, 0],
    leastBody: 0.5,
    mostFooterLines: 2,
  },
};

/** Sizes for a frame, px: what shape it has, and how large each part of it is. */
export function stillMeasures(size: { width: number; height: number }): StillMeasures {
  const shape = stillShape(size);
  const shares = SHARES[shape];
  const unit = shape === 'wide' || shape === 'thumbnail' ? size.height : size.width;
  const [largest, smallest, lines] = shares.headline;
  const [subline, sublines] = shares.subline;
  return {
    shape,
    text: shares.text * unit,
    margin: shares.margin * unit,
    headline: { largest: largest * unit, smallest: smallest * unit, lines },
    subline: { size: subline * unit, lines: sublines },
    leastBody: shares.leastBody * size.height,
    mostFooterLines: shares.mostFooterLines,
  };
}
