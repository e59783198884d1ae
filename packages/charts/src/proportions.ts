/** Sizes of a drawing's parts, px, all from the size of its text, so that a still and a screen are one drawing. */
export interface Proportions {
  /** No room beside the curves: names go in rows on top, keys alone stand at the lines' ends. */
  narrow: boolean;
  /** No room for more than the curves and their axes: no names, no lanes. */
  compact: boolean;
  text: number;
  /** Height of a line of text. */
  row: number;
  meanLine: number;
  pullLine: number;
  hairline: number;
  mark: number;
  /** The cursor's mark on a map, larger than those of the lines. */
  cursorMark: number;
  /** Kept free along the drawing's edges. */
  edge: number;
  /** Lane on top for the window's dimension line. */
  windowLane: number;
  /** Lane right above the panels for the cursor's speed. */
  cursorLane: number;
  /** Title's row above a panel. */
  title: number;
  /** Between a panel and the next one's title. */
  gap: number;
  /** The engine-speed figures, on a narrow drawing with the axis' title under them. */
  ticks: number;
  /** From the plot's right edge to the labels. */
  labelGap: number;
  /** The axis' title stands in a row of its own under its figures, else behind the last of them. */
  titleBelow: boolean;
  /** A line's sample before its name. */
  sample: number;
  /** Rows that names on top take at most; what finds no room in them is counted. */
  mostNameRows: number;
  /** What stands at the lines' ends, said behind the names on top: nothing has room beside the lines. */
  valuesOnTop: boolean;
}

const NARROW_PX = 560;
const NARROW_EM = 36;
const SMALLEST_NARROW_TEXT = 14;
const COMPACT_EM = 14;

export function proportionsFor(size: { width: number; height: number; text: number }): Proportions {
  const narrow = size.width < NARROW_PX || size.width < NARROW_EM * size.text;
  const compact = size.height < COMPACT_EM * size.text;
  const text = narrow && !compact ? Math.max(size.text, SMALLEST_NARROW_TEXT) : size.text;
  return {
    narrow,
    compact,
    text,
    row: 1.25 * text,
    meanLine: 0.19 * text,
    pullLine: 0.075 * text,
    hairline: Math.max(1, 0.05 * text),
    mark: 0.33 * text,
    cursorMark: 0.5 * text,
    edge: 0.3 * text,
    windowLane: (narrow ? 2.3 : 1.4) * text,
    cursorLane: 1.7 * text,
    title: 1.6 * text,
    gap: 0.75 * text,
    ticks: (narrow && !compact ? 3.45 : 1.75) * text,
    labelGap: 1.5 * text,
    titleBelow: narrow && !compact,
    sample: 2.4 * text,
    mostNameRows: Number.POSITIVE_INFINITY,
    valuesOnTop: false,
  };
}
