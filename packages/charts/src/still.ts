import type { ChartDescription, ChartPanel, DrawSize, Scene, SceneNode, StillDescription } from './model.ts';
import { type Proportions, proportionsFor } from './proportions.ts';
import { textAt } from './scene-node.ts';
import { drawStackIn, groundOf } from './stack.ts';
import { signatureIn } from './still-signature.ts';
import { balanced, shortened, wrapped } from './text-width.ts';
import { THEMES } from './theme.ts';

/** Shares of the still's height. Nothing is smaller than three hundredths: a still is read on a telephone too. */
const TEXT = 0.0305;
const SUBLINE = 0.033;
const HEADLINE = 0.062;
const SMALLEST_HEADLINE = 0.045;
const MARGIN = 0.05;
/** The stack has at least this, whatever is said round it. */
const LEAST_STACK = 0.5;
/** A panel lower than this, in heights of text, shows nothing; the last ones are left out before that. */
const LEAST_PANEL = 3.4;

interface Words {
  lines: string[];
  sizePx: number;
}

/** The headline in at most two lines: first as large as possible on one, then smaller, then cut. */
function headlineIn(text: string, widthPx: number, height: number): Words {
  for (const most of [1, 2]) {
    for (let share = HEADLINE; share >= SMALLEST_HEADLINE - 1e-9; share -= 0.001) {
      const lines = wrapped(text, widthPx, share * height, 'serifStrong');
      const smallestOnOneLine = HEADLINE - 0.01;
      if (lines.length <= most && (most === 2 || share >= smallestOnOneLine))
        return { lines, sizePx: share * height };
    }
  }
  const sizePx = SMALLEST_HEADLINE * height;
  const [first = '', ...rest] = wrapped(text, widthPx, sizePx, 'serifStrong');
  return { lines: [first, shortened(rest.join(' '), widthPx, sizePx, 'serifStrong')], sizePx };
}

/** Lines of a small text; beyond the most that there is room for, the last is cut with an ellipsis. */
function linesIn(texts: string[], widthPx: number, sizePx: number, most: number): Words {
  const separate = texts.flatMap((text) => balanced(text, widthPx, sizePx, 'sans'));
  const running = wrapped(texts.join(' · '), widthPx, sizePx, 'sans');
  const fewer = running.length < separate.length ? running : separate;
  if (fewer.length <= most) return { lines: fewer, sizePx };
  const last = shortened(running.slice(most - 1).join(' '), widthPx, sizePx, 'sans');
  return { lines: [...running.slice(0, most - 1), last], sizePx };
}

/** The first panels, as many as can be read in this height. */
function panelsThatFit(chart: ChartDescription, height: number, proportions: Proportions): ChartPanel[] {
  const { text, title, gap, ticks, windowLane } = proportions;
  const around = ticks + (chart.xWindow ? windowLane : 0);
  for (let count = chart.panels.length; count > 1; count -= 1) {
    const panels = chart.panels.slice(0, count);
    const free = height - around - count * title - (count - 1) * gap;
    const shares = panels.reduce((sum, { share }) => sum + share, 0);
    if (panels.every(({ share }) => (free * share) / shares >= LEAST_PANEL * text)) return panels;
  }
  return chart.panels.slice(0, 1);
}

/**
 * A still for a video or an article: headline in serif, subline, the stack, and under it what a doubter asks for. All
 * sizes are shares of its height, so that 1920 × 1080 and 3840 × 2160 are one picture.
 *
 * @example sceneToSvg(drawStill(still, { width: 1920, height: 1080, theme: 'dark', ground: true }))
 */
export function drawStill(still: StillDescription, size: Omit<DrawSize, 'text'>): Scene {
  const { width, height } = size;
  const theme = THEMES[size.theme];
  const text = TEXT * height;
  const margin = MARGIN * height;
  const proportions = proportionsFor({ width, height, text });
  const room = width - 2 * margin;

  const headline = headlineIn(still.headline, room, height);
  const subline = linesIn([still.subline], room, SUBLINE * height, 2);
  const headlineRow = 1.16 * headline.sizePx;
  const sublineRow = 1.35 * subline.sizePx;
  const footerRow = 1.4 * text;
  const firstHeadline = 0.9 * margin + 0.8 * headline.sizePx;
  const firstSubline =
    firstHeadline + (headline.lines.length - 1) * headlineRow + 0.35 * headline.sizePx + sublineRow * 0.85;
  const stackTop = firstSubline + (subline.lines.length - 1) * sublineRow + 0.75 * text;
  const footerRoom = height - margin - stackTop - LEAST_STACK * height;
  const signature = signatureIn(still.signature, room, text, theme.softInk);
  const warning = still.warning === null ? [] : [still.warning];
  const rows = Math.max(1, Math.floor(footerRoom / footerRow) - warning.length);
  const footer = linesIn(still.footer, room - signature.widthPx, text, rows);
  const lastFooter = height - 0.9 * margin;
  const firstFooter = lastFooter - (footer.lines.length - 1) * footerRow;
  const firstWord = firstFooter - warning.length * footerRow;

  const frame = { left: margin, right: width - margin, top: stackTop, bottom: firstWord - 1.5 * text };
  const chart = { ...still.chart, panels: panelsThatFit(still.chart, frame.bottom - frame.top, proportions) };
  const look = { theme: size.theme, ground: theme.paper, overlay: !size.ground, proportions };
  const { nodes } = drawStackIn(chart, frame, look, false);
  const words = (
    said: Words,
    first: number,
    row: number,
    face: 'sans' | 'serifStrong',
    colour: string,
  ): SceneNode[] =>
    said.lines.map((line, index) =>
      textAt(margin, first + index * row, line, { sizePx: said.sizePx, face, colour }),
    );
  return {
    width,
    height,
    nodes: [
      ...(size.ground ? [groundOf(size, theme.paper)] : []),
      ...words(headline, firstHeadline, headlineRow, 'serifStrong', theme.ink),
      ...words(subline, firstSubline, sublineRow, 'sans', theme.softInk),
      ...nodes,
      ...words({ lines: warning, sizePx: text }, firstWord, footerRow, 'sans', theme.cautionInk),
      ...words(footer, firstFooter, footerRow, 'sans', theme.softInk),
      ...signature.nodes(width - margin, lastFooter),
    ],
    alternative: [`${still.headline} ${still.subline}`.trim(), still.chart.alternative, ...warning]
      .filter(Boolean)
      .map(asSentence)
      .join(' '),
  };
}

/** For a voice that reads it out: a heading ends like a sentence. */
const asSentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
