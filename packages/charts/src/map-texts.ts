import type { ListedPoints } from './clip.ts';
import type { OperatingPixels } from './map.ts';
import type { ThemeName } from './model.ts';
import { drawnStyle } from './palette.ts';
import type { PlaceableText } from './placed-texts.ts';
import type { Proportions } from './proportions.ts';
import { THEMES } from './theme.ts';

interface LabelledLine {
  label: string;
  line: ListedPoints;
}

const BESIDE = [
  [1, 0],
  [1, -0.8],
  [0, -1],
  [1, 0.8],
  [-1, -0.8],
  [-1, 0],
  [0, 1],
  [-1, 0.8],
] as const;
const AT_LEFT_END = [
  [-1, 0],
  [-1, -0.8],
  [0, -1],
  [-1, 0.8],
] as const;
const AT_RIGHT_END = [
  [1, 0],
  [0, 1],
  [1, 0.8],
  [1, -0.8],
] as const;
/** A plot lower than this has room for the combinations, the edges and the highest speed line, not for a name at every line. */
const ROOMY_EM = 15;
/** An efficiency is written on its line at one of so many places. */
const PLACES_ON_LINE = 14;

/** The words of a map, the weightiest first: combinations, their speeds, edges, speed lines, efficiencies. */
export function mapTexts(
  {
    speedLines,
    efficiency,
    edges,
    operating,
    plotHeight,
  }: {
    speedLines: readonly LabelledLine[];
    efficiency: readonly LabelledLine[];
    edges: readonly LabelledLine[];
    operating: readonly OperatingPixels[];
    /** px */
    plotHeight: number;
  },
  { text, narrow, cursorMark, compact }: Proportions,
  theme: ThemeName,
): PlaceableText[] {
  if (compact) return [];
  const { ink, softInk } = THEMES[theme];
  const colourOf = ({ operating: { style } }: OperatingPixels) => drawnStyle(style, theme).colour;
  const near = [cursorMark + 0.1 * text, 0.8 * text, 1.4 * text, 2.2 * text, 3.2 * text];

  const names = operating.flatMap((one): PlaceableText[] => {
    const drawn = finitePoints(one.line);
    const { key, name } = one.operating;
    const parts: PlaceableText['parts'] = [{ text: key, face: 'sansStrong' }];
    if (!narrow && name !== '') parts.push({ text: name, face: 'sansStrong' });
    const anchors = drawn.slice(-1);
    return anchors.length === 0
      ? []
      : [{ parts, colour: colourOf(one), anchors, ways: BESIDE, distances: near, mostInk: 0.3 }];
  });
  // Many on a narrow map run close to one another: the marks of the rest stand for the same speeds.
  const speeds = (narrow && operating.length > 2 ? operating.slice(0, 1) : operating).flatMap((one) =>
    one.marks
      .filter((at) => at.text !== '')
      .map(
        (at): PlaceableText => ({
          parts: [{ text: at.text, face: 'sans' }],
          colour: colourOf(one),
          anchors: [at],
          ways: BESIDE,
          distances: near.slice(0, 4),
          mostInk: 0.22,
        }),
      ),
  );
  const edgeNames = edges.flatMap(({ label, line }): PlaceableText[] => {
    const anchors = finitePoints(line).reverse();
    return anchors.length === 0
      ? []
      : [
          {
            parts: [{ text: label, face: 'sans' }],
            colour: ink,
            anchors,
            ways: [...AT_LEFT_END, ...AT_RIGHT_END],
            distances: [0.4 * text, 0.8 * text],
            mostInk: 0.12,
          },
        ];
  });
  const isRoomy = plotHeight >= ROOMY_EM * text;
  const speedNames = (isRoomy ? speedLines : speedLines.slice(-1)).flatMap(
    ({ label, line }): PlaceableText[] => {
      const drawn = finitePoints(line);
      const [first, last] = [drawn[0], drawn.at(-1)];
      if (label === '' || !first || !last) return [];
      const common = { parts: [{ text: label, face: 'sans' as const }], colour: softInk, mostInk: 0.12 };
      const distances = [0.35 * text, 0.7 * text];
      return [
        {
          ...common,
          anchors: [first, last],
          ways: [...AT_LEFT_END, ...AT_RIGHT_END],
          distances,
        },
      ];
    },
  );
  const levels = (isRoomy ? efficiency : []).flatMap(({ label, line }): PlaceableText[] => {
    const drawn = finitePoints(line);
    const step = Math.max(1, Math.floor(drawn.length / PLACES_ON_LINE));
    const anchors = drawn.filter((_, index) => index % step === 0 && index > 0 && index < drawn.length - 1);
    return anchors.length === 0
      ? []
      : [
          {
            parts: [{ text: label, face: 'sans' }],
            colour: softInk,
            anchors,
            ways: [[0, 0]],
            distances: [0],
            mostInk: 0.17,
          },
        ];
  });
  return [...names, ...speeds, ...edgeNames, ...speedNames, ...levels];
}

const finitePoints = ({ x, y }: ListedPoints): { x: number; y: number }[] =>
  x.flatMap((atX, index) => {
    const atY = y[index]!;
    return Number.isFinite(atX) && Number.isFinite(atY) ? [{ x: atX, y: atY }] : [];
  });
