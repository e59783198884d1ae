import { allOf, numberOf, readSvg, type SvgElement } from './read-svg.ts';

/** A straight axis read off a file: what stands at a pixel, and where a value stands. */
export interface ReadAxis {
  valueAt: (px: number) => number;
  pxAt: (value: number) => number;
  /** Most that a tick lies off the straight line through them all, px. */
  offPx: number;
}

export interface ReadCurve {
  colour: string;
  widthPx: number;
  /** As written, px. */
  points: [x: number, y: number][];
}

export interface ReadPanel {
  title: string;
  /** What follows the title: unit, and what the figures are. */
  unit: string;
  y: ReadAxis;
  curves: ReadCurve[];
  /** Outlines of tints: there and back. */
  tints: { colour: string; points: [x: number, y: number][] }[];
  /** By colour, the first word beside the curves' ends: a combination's letter. */
  letters: Map<string, string>;
}

/** Height of a figure over its size in Inter: the font's capitals (`OS/2` sCapHeight 1490 of 2048). A tick's middle stands on its line. */
const FIGURE_HEIGHT = 1490 / 2048;

/** The panels of a picture and its axis of engine speed, read from ticks, their figures and paths alone. */
export function readCurves(file: string, decimalMark: '.' | ','): { x: ReadAxis; panels: ReadPanel[] } {
  const svg = readSvg(file);
  const groups = svg.children.filter(({ tag, children }) => tag === 'g' && children.some(isVertical));
  if (groups.length === 0) throw new Error('no panel in the picture');
  const lines = allOf(svg).filter(isVertical);
  const xTicks = figuresOf(svg.children, 'middle', decimalMark).flatMap(({ value, x }) => {
    const on = lines.find((line) => Math.abs(numberOf(line, 'x1') - x) < 0.02);
    return on ? [{ value, px: numberOf(on, 'x1') }] : [];
  });
  return { x: straightAxis(xTicks), panels: groups.map((group) => readPanel(group, decimalMark)) };
}

function readPanel(group: SvgElement, decimalMark: '.' | ','): ReadPanel {
  const [title, unit] = group.children.filter(({ tag }) => tag === 'text');
  const level = group.children.filter((one) => one.tag === 'line' && one.attributes.y1 === one.attributes.y2);
  const ticks = figuresOf(group.children, 'end', decimalMark).flatMap(({ value, y, size }) => {
    const middle = y - (FIGURE_HEIGHT / 2) * size;
    const on = level.find((line) => Math.abs(numberOf(line, 'y1') - middle) < 0.02 * size);
    return on ? [{ value, px: numberOf(on, 'y1') }] : [];
  });
  const paths = group.children.filter(({ tag }) => tag === 'path');
  const tints = group.children
    .filter(({ attributes }) => attributes.class === 'bands')
    .flatMap(({ children }) => children.filter(({ tag }) => tag === 'path'));
  const letters = new Map<string, string>();
  for (const { tag, attributes, text } of group.children) {
    if (tag === 'text' && /^[A-Z]$/u.test(text)) letters.set(attributes.fill!, text);
  }
  return {
    title: title!.text,
    unit: unit?.text ?? '',
    y: straightAxis(ticks),
    curves: paths
      .filter(({ attributes }) => attributes.fill === 'none')
      .map((path) => ({
        colour: path.attributes.stroke!,
        widthPx: numberOf(path, 'stroke-width'),
        points: pointsOf(path),
      })),
    tints: tints.map((path) => ({ colour: path.attributes.fill!, points: pointsOf(path) })),
    letters,
  };
}

const isVertical = ({ tag, attributes }: SvgElement): boolean =>
  tag === 'line' && attributes.x1 === attributes.x2;

/** Texts that are a figure and nothing else, set about or before their place. */
function figuresOf(elements: SvgElement[], anchor: 'middle' | 'end', decimalMark: '.' | ',') {
  return elements.flatMap((element) => {
    if (element.tag !== 'text' || element.attributes['text-anchor'] !== anchor) return [];
    const value = readFigure(element.text, decimalMark);
    if (value === null) return [];
    const size = numberOf(element, 'font-size');
    return [{ value, size, x: numberOf(element, 'x'), y: numberOf(element, 'y') }];
  });
}

/** `1,250`, `−0.4`, `+15` as a number; `null`: something else. Beside a decimal comma thousands have a narrow space. */
export function readFigure(text: string, decimalMark: '.' | ','): number | null {
  const bare = text.replace(/[\s\u00a0\u202f]/gu, '').replace('\u2212', '-');
  const western = decimalMark === ',' ? bare.replace(',', '.') : bare.replace(/,(?=\d{3})/gu, '');
  return /^[-+]?\d+(?:\.\d+)?$/u.test(western) ? Number(western) : null;
}

/** Every figure that stands in a line of words. */
export const figuresIn = (text: string, decimalMark: '.' | ','): number[] =>
  text
    .split(/[^\d.,+\-\u2212\u202f]+/u)
    .flatMap((word) => readFigure(word.replace(/[.,]$/u, ''), decimalMark) ?? []);

/** Least squares through the ticks. */
function straightAxis(ticks: { value: number; px: number }[]): ReadAxis {
  if (ticks.length < 2) throw new Error('an axis needs two ticks with figures');
  const mean = (pick: (tick: { value: number; px: number }) => number) =>
    ticks.reduce((sum, tick) => sum + pick(tick), 0) / ticks.length;
  const [value, px] = [mean((tick) => tick.value), mean((tick) => tick.px)];
  const slope =
    mean((tick) => (tick.value - value) * (tick.px - px)) / mean((tick) => (tick.value - value) ** 2);
  const pxAt = (wanted: number): number => px + slope * (wanted - value);
  return {
    pxAt,
    valueAt: (place) => value + (place - px) / slope,
    offPx: Math.max(...ticks.map((tick) => Math.abs(pxAt(tick.value) - tick.px))),
  };
}

function pointsOf({ attributes }: SvgElement): [number, number][] {
  const d = attributes.d!;
  if (!/^[MLZ\d.,-]*$/u.test(d)) throw new Error(`a path of other than straight lines: ${d.slice(0, 80)}`);
  return [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/gu)].map(([, x, y]) => [Number(x), Number(y)]);
}
