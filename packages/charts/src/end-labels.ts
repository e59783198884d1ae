import type { Face } from './fonts.ts';
import type { LineStyle, SceneNode, ThemeName } from './model.ts';
import { drawnStyle } from './palette.ts';
import type { PreparedBand, PreparedPanel } from './prepared.ts';
import type { Proportions } from './proportions.ts';
import { straight, textAt } from './scene-node.ts';
import { spread } from './spread.ts';
import { shortened, textWidth, wrapped } from './text-width.ts';

interface LabelPart {
  text: string;
  face: Face;
}

/** What stands at a line's end: one or two rows of parts. */
export interface EndLabel {
  style: LineStyle;
  end: { x: number; y: number };
  rows: LabelPart[][];
  rowPx: number;
}

const PART_GAP = 0.4;

const rowWidth = (row: LabelPart[], text: number): number =>
  row.reduce(
    (sum, part, index) => sum + textWidth(part.text, text, part.face) + (index > 0 ? PART_GAP * text : 0),
    0,
  );

export const labelsWidth = (labels: EndLabel[], text: number): number =>
  Math.max(0, ...labels.flatMap(({ rows }) => rows.map((row) => rowWidth(row, text))));

const labelHeight = ({ rows, rowPx }: EndLabel): number => rows.length * rowPx + 0.1 * rowPx;

/**
 * From the fullest to the scantest: a long name in two rows with the value under it, a long name cut, name or value in
 * one row, without names, and close together.
 */
const FORMS = [
  { name: 'whole', rows: 2, rowEm: 1.25 },
  { name: 'cut', rows: 2, rowEm: 1.25 },
  { name: 'cut', rows: 1, rowEm: 1.25 },
  { name: 'none', rows: 1, rowEm: 1.25 },
  { name: 'none', rows: 1, rowEm: 1.05 },
] as const;
const SCANTEST = FORMS[4];

const MOST_NAME_ROWS = 2;

export interface LabelRoom {
  heightPx: number;
  widthPx: number;
  /** Keys that have been named above, or on top. A name is said once in a stack. Grows. */
  named: Set<string>;
  /** Whether there is room for the values too. */
  values: boolean;
}

/** The labels of a panel, in the fullest form that its height allows; what even the scantest has no room for is left out. */
export function endLabels(panel: PreparedPanel, room: LabelRoom, { text }: Proportions): EndLabel[] {
  const labelled = [
    ...panel.lines.flatMap(({ line, end }) =>
      line.label && end ? [{ style: line.style, end, label: line.label }] : [],
    ),
    ...panel.bands.flatMap(layerLabel),
  ];
  const inForm = (form: (typeof FORMS)[number]): EndLabel[] =>
    labelled.map(({ style, end, label }) => {
      const key: LabelPart = { text: label.key, face: 'sansStrong' };
      const value: LabelPart[] =
        room.values && label.value !== null ? [{ text: label.value, face: 'sans' }] : [];
      const sayName = form.name !== 'none' && label.name !== '' && !room.named.has(label.key);
      if (!sayName) return { style, end, rows: [[key, ...value]], rowPx: form.rowEm * text };
      const keyWidth = textWidth(label.key, text, 'sansStrong') + PART_GAP * text;
      const parts = wrapped(label.name, room.widthPx - keyWidth, text, 'sansStrong');
      const isShort = parts.length === 1 || form.name === 'cut' || parts.length > MOST_NAME_ROWS;
      const [first = '', ...more] = isShort ? [label.name] : parts;
      const names: LabelPart[][] = [
        [key, { text: first, face: 'sansStrong' }],
        ...more.map((part): LabelPart[] => [{ text: part, face: 'sansStrong' }]),
      ];
      const withValue = form.rows === 2 && value.length > 0 ? [...names, value] : names;
      return { style, end, rows: withValue, rowPx: form.rowEm * text };
    });
  const total = (labels: EndLabel[]) => labels.reduce((sum, label) => sum + labelHeight(label), 0);
  const form = FORMS.find((candidate) => total(inForm(candidate)) <= room.heightPx) ?? SCANTEST;
  const labels = inForm(form);
  while (total(labels) > room.heightPx) labels.pop();
  if (form.name !== 'none') for (const { label } of labelled) room.named.add(label.key);
  return labels;
}

/** A layer is named at the middle of its height where it ends. */
function layerLabel({ band, low, high }: PreparedBand) {
  const at = low.y.length - 1 - Array.from(low.y).reverse().findIndex(Number.isFinite);
  const [x, bottom, top] = [low.x[at], low.y[at], high.y[at]];
  if (!band.layer || x === undefined || bottom === undefined || top === undefined) return [];
  const { name, value } = band.layer;
  // A layer's name stands in ink: its tint would not be read.
  return [
    { style: 'ink' as const, end: { x, y: (bottom + top) / 2 }, label: { key: name, name: '', value } },
  ];
}

/** The column of a panel's labels, and where a line's end lies. */
export interface LabelPlace {
  x: number;
  widthPx: number;
  top: number;
  bottom: number;
  at: (end: EndLabel['end']) => [number, number];
}

/** Middles of the labels, spread apart. */
export const labelCentres = (labels: EndLabel[], place: LabelPlace): number[] =>
  spread(
    labels.map(({ end }) => place.at(end)[1]),
    labels.map(labelHeight),
    [place.top, place.bottom],
  );

/**
 * Labels beside their lines' ends, spread apart; one that had to move, or stands far from its end, has a leader. One that
 * is still to come keeps its place and is not drawn.
 */
export function drawEndLabels(
  labels: EndLabel[],
  place: LabelPlace,
  proportions: Proportions,
  theme: ThemeName,
  isStillToCome: (label: EndLabel) => boolean,
): SceneNode[] {
  const { text, hairline, mark } = proportions;
  const ends = labels.map(({ end }) => place.at(end));
  const centres = labelCentres(labels, place);
  return labels.flatMap((label, index) => {
    if (isStillToCome(label)) return [];
    const { colour } = drawnStyle(label.style, theme);
    const [endX, endY] = ends[index] ?? [0, 0];
    const centre = centres[index] ?? 0;
    const row = label.rowPx;
    const nodes: SceneNode[] = [];
    const from = endX + 1.6 * mark;
    const to = place.x - 0.25 * text;
    if (Math.abs(centre - endY) > 0.5 * text || to - from > 1.5 * text) {
      nodes.push(straight(from, endY, to, centre, { colour, widthPx: hairline, opacity: 0.6 }));
    }
    const first = centre - ((label.rows.length - 1) * row) / 2 + 0.36 * text;
    label.rows.forEach((parts, rowIndex) => {
      let x = place.x;
      for (const part of parts) {
        const shown = shortened(part.text, place.x + place.widthPx - x, text, part.face);
        if (shown === '') break;
        nodes.push(textAt(x, first + rowIndex * row, shown, { sizePx: text, face: part.face, colour }));
        x += textWidth(shown, text, part.face) + PART_GAP * text;
      }
    });
    return nodes;
  });
}
