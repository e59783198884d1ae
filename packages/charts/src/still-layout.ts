import type { Box } from './columns.ts';
import type { PictureBody, StillDescription } from './model.ts';
import { type StillMeasures, stillMeasures } from './still-shape.ts';
import { type SignatureLayout, signatureIn } from './still-signature.ts';
import type { StillSize } from './still-size.ts';
import { headlineIn, linesIn, partsIn } from './still-words.ts';
import { THEMES } from './theme.ts';

/** Lines of one size, the first one's baseline, and from one to the next. */
export interface PlacedLines {
  lines: string[];
  sizePx: number;
  first: number;
  row: number;
}

/** Where the words of a still stand, and what they leave to its picture. */
export interface StillLayout {
  measures: StillMeasures;
  headline: PlacedLines;
  subline: PlacedLines;
  warning: PlacedLines;
  footer: PlacedLines;
  signature: SignatureLayout;
  /** Baseline of what stands lowest. */
  lastRow: number;
  frame: Box;
}

/** A card needs this share of the height where its words are large; curves make do with what the shape gives them. */
const LEAST_CARD = 0.54;
/** One large number and two bare curves make do with less, so that the footer has its pulls. */
const LEAST_NUMBER = 0.42;
/** Fewer lines of these do not hold what a doubter asks for. */
const FOOTER_LINES = { wide: 2, square: 3, tall: 4, thumbnail: 2 } as const;
const FOOTER_GAP = { stack: 1.5, card: 1.9 };
/** A card's words begin further below the subline than a chart, whose first line is small. */
const TOP_GAP = { stack: 0.75, card: 1.3 };

/**
 * Headline and subline above, what a doubter asks for below, the picture between. Where that leaves too little to the picture, the
 * footer is cut to a few lines, then the subline to one, then the headline is as small as may be, then the footer has one line.
 */
export function stillLayout(still: StillDescription, size: StillSize): StillLayout {
  const measures = stillMeasures(size);
  const { headline, subline } = measures;
  const footerLines = FOOTER_LINES[measures.shape];
  const small = { ...headline, largest: headline.smallest };
  const tries = [
    { headline, sublines: subline.lines, footerLines },
    { headline, sublines: Math.min(1, subline.lines), footerLines },
    { headline: small, sublines: Math.min(1, subline.lines), footerLines },
  ];
  for (const attempt of tries) {
    const layout = layoutWith(still, size, measures, attempt);
    if (layout.hasRoom) return layout;
  }
  return layoutWith(still, size, measures, { ...tries[2]!, footerLines: 1 });
}

const leastBodyOf = ({ kind }: PictureBody, { shape, leastBody }: StillMeasures, height: number): number =>
  kind === 'number'
    ? LEAST_NUMBER * height
    : kind === 'stack' || shape === 'wide'
      ? leastBody
      : Math.max(leastBody, LEAST_CARD * height);

function layoutWith(
  still: StillDescription,
  { width, height, theme }: StillSize,
  measures: StillMeasures,
  most: { headline: StillMeasures['headline']; sublines: number; footerLines: number },
): StillLayout & { hasRoom: boolean } {
  const { shape, text, margin } = measures;
  const room = width - 2 * margin;
  const isNarrow = shape === 'tall' || shape === 'square';
  const gap = still.body.kind === 'stack' ? 'stack' : 'card';

  const said = headlineIn(still.headline, room, most.headline);
  const headline = { ...said, row: 1.16 * said.sizePx, first: 0.9 * margin + 0.8 * said.sizePx };
  const lastHeadline = headline.first + (headline.lines.length - 1) * headline.row;
  const sizePx = measures.subline.size;
  const row = 1.35 * sizePx;
  const lines = most.sublines === 0 ? [] : partsIn([still.subline], room, sizePx, most.sublines, 'last');
  const subline = { lines, sizePx, row, first: lastHeadline + 0.35 * headline.sizePx + 0.85 * row };
  const lastWord =
    lines.length === 0 ? lastHeadline + 0.3 * headline.sizePx : subline.first + (lines.length - 1) * row;
  const top = lastWord + TOP_GAP[gap] * text;

  const signature = signatureIn(still.signature, room, { text, isNarrow }, THEMES[theme].softInk);
  const footerRow = 1.4 * text;
  const lastRow = height - 0.9 * margin;
  const lastFooter = lastRow - signature.heightPx;
  const warned = still.warning === null ? [] : linesIn(still.warning, room, text, 1);
  const gapBelow = FOOTER_GAP[gap] * text;
  const leastBody = leastBodyOf(still.body, measures, height);
  const rows = Math.floor((lastFooter - gapBelow - top - leastBody) / footerRow) + 1 - warned.length;
  const wanted = partsIn(still.footer, room - signature.widthPx, text, measures.mostFooterLines);
  const least = Math.min(most.footerLines, wanted.length);
  const allowed = Math.max(rows, least, 1);
  const shown = partsIn(
    still.footer,
    room - signature.widthPx,
    text,
    Math.min(allowed, measures.mostFooterLines),
  );
  const firstFooter = lastFooter - (Math.max(1, shown.length) - 1) * footerRow;
  const footer = { lines: shown, sizePx: text, row: footerRow, first: firstFooter };
  const firstWarning = firstFooter - warned.length * footerRow;
  return {
    measures,
    headline,
    subline,
    warning: { lines: warned, sizePx: text, row: footerRow, first: firstWarning },
    footer,
    signature,
    lastRow,
    frame: { left: margin, right: width - margin, top, bottom: firstWarning - gapBelow },
    hasRoom: rows >= least,
  };
}
