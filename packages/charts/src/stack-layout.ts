import { formatNumber } from '@pullbook/core/quantity';
import { type Axis, roomyAxis, roundTicks } from './axis.ts';
import type { Box } from './columns.ts';
import { type EndLabel, endLabels, labelsWidth } from './end-labels.ts';
import type { ChartDescription } from './model.ts';
import { namedLines, nameRowsHeight } from './name-rows.ts';
import { type PreparedPanel, preparedPanel } from './prepared.ts';
import type { Proportions } from './proportions.ts';
import { textWidth } from './text-width.ts';

export interface LaidPanel {
  prepared: PreparedPanel;
  top: number;
  bottom: number;
  axis: Axis;
  tickTexts: string[];
  labels: EndLabel[];
}

export interface StackLayout {
  frame: Box;
  left: number;
  right: number;
  /** Middle of the window's dimension line. */
  windowMiddle: number;
  named: ReturnType<typeof namedLines>;
  /** Keys whose names are said, on top or beside a line. */
  saidNames: Set<string>;
  panels: LaidPanel[];
  xAxis: Axis;
  xTickTexts: string[];
  /** Left edge of the end labels, and the room they have. */
  labels: { x: number; widthPx: number };
}

const MOST_LABEL_SHARE = 0.32;
/** The axis' whole title stands beside its figures where it takes no more than this of the width, else its unit. */
const MOST_TITLE_SHARE = 0.2;
const LEAST_PANEL_EM = 1;

/** Figures on the axis are signed where a panel shows differences. */
const isDifference = (panel: PreparedPanel['panel']): boolean =>
  panel.zeroLine && panel.lines.every(({ style }) => style === 'ink');

/**
 * Where everything of a stack goes. Names stand beside the lines' ends where they fit, else in rows on top.
 */
export function layoutStack(
  chart: ChartDescription,
  frame: Box,
  proportions: Proportions,
  hasCursor: boolean,
): StackLayout {
  const { narrow, compact } = proportions;
  const prepared = chart.panels.map((panel) => preparedPanel(panel, chart.xRange));
  const beside = layoutWith(chart, prepared, frame, proportions, {
    hasCursor,
    namesOnTop: narrow && !compact,
  });
  const unnamed = chart.panels.some(({ lines }) =>
    lines.some(({ label }) => label !== null && label.name !== '' && !beside.saidNames.has(label.key)),
  );
  const onTop = unnamed && !compact && beside.named.length === 0;
  return onTop ? layoutWith(chart, prepared, frame, proportions, { hasCursor, namesOnTop: true }) : beside;
}

function layoutWith(
  chart: ChartDescription,
  prepared: PreparedPanel[],
  frame: Box,
  proportions: Proportions,
  { hasCursor, namesOnTop }: { hasCursor: boolean; namesOnTop: boolean },
): StackLayout {
  const { text, narrow, compact, title, gap, ticks, labelGap } = proportions;
  const windowLane = chart.xWindow && !compact ? proportions.windowLane : 0;
  const lane = windowLane + (hasCursor && !compact ? proportions.cursorLane : 0);
  const width = frame.right - frame.left;
  const lines = chart.panels.flatMap((panel) => panel.lines);
  const named = namesOnTop ? namedLines(lines, width, proportions) : [];
  const saidNames = new Set(named.map(({ key }) => key));

  // Heights first: they decide the ticks, the ticks the left margin, the labels the right one.
  const above = frame.top + nameRowsHeight(named, proportions);
  const free = frame.bottom - ticks - above - lane - prepared.length * title - (prepared.length - 1) * gap;
  const shares = prepared.reduce((sum, { panel }) => sum + panel.share, 0);
  let y = above + lane;
  const panels = prepared.map((one): LaidPanel => {
    const top = y + title;
    const bottom = top + Math.max(LEAST_PANEL_EM * text, (free * one.panel.share) / shares);
    y = bottom + gap;
    const reach = one.reach;
    const shown: typeof reach =
      reach && one.panel.zeroLine ? [Math.min(0, reach[0]), Math.max(0, reach[1])] : reach;
    const axis = shown
      ? roomyAxis(shown, {
          lengthPx: bottom - top,
          nearestPx: 1.4 * text,
          headroomPx: one.marks.length > 0 && !compact ? 1.3 * text : 0,
        })
      : { range: [0, 1] as [number, number], ticks: [], decimals: 0 };
    const sign = isDifference(one.panel);
    const decimals = Math.max(axis.decimals, one.panel.decimals);
    const tickTexts = axis.ticks.map((tick) =>
      formatNumber(tick, decimals, chart.decimalMark, { sign, thousands: true }),
    );
    const labels = endLabels(
      one,
      {
        widthPx: MOST_LABEL_SHARE * width - labelGap,
        heightPx: bottom - top + (narrow ? 0.5 * text : title),
        named: saidNames,
        values: !narrow && !compact,
      },
      proportions,
    );
    return { prepared: one, top, bottom, axis, tickTexts, labels };
  });

  const xText = (tick: number, decimals: number) =>
    formatNumber(tick, decimals, chart.decimalMark, { thousands: true });
  const widestX = Math.max(...chart.xRange.map((edge) => textWidth(xText(edge, 0), text, 'sans')));
  const tickWidth = Math.max(
    0,
    ...panels.flatMap(({ tickTexts }) => tickTexts.map((tick) => textWidth(tick, text, 'sans'))),
  );
  const left = frame.left + Math.max(tickWidth + 0.6 * text, widestX / 2);
  const unitWidth = textWidth(chart.xUnit, text, 'sans');
  const wholeTitle = widestX / 2 + 1.1 * text + textWidth(chart.xTitle, text, 'sansStrong') + unitWidth;
  const titleRoom =
    wholeTitle <= MOST_TITLE_SHARE * width ? wholeTitle : widestX / 2 + 0.6 * text + unitWidth;
  const unitRoom = narrow && !compact ? widestX / 2 : titleRoom;
  const labelRoom = labelsWidth(
    panels.flatMap(({ labels }) => labels),
    text,
  );
  const wantedMargin = Math.max(unitRoom, labelRoom > 0 ? labelGap + labelRoom + 1 : 0);
  const margin = Math.min(wantedMargin, MOST_LABEL_SHARE * width);
  const right = Math.max(left + text, frame.right - margin);
  const ticked = roundTicks(chart.xRange, right - left, widestX + 1.6 * text);
  const xAxis = chart.xCounts
    ? { ...ticked, ticks: ticked.ticks.filter(Number.isInteger), decimals: 0 }
    : ticked;
  return {
    frame,
    left,
    right,
    windowMiddle: above + windowLane - 0.7 * text,
    named,
    saidNames,
    panels,
    xAxis,
    xTickTexts: xAxis.ticks.map((tick) => xText(tick, xAxis.decimals)),
    labels: { x: right + labelGap, widthPx: frame.right - right - labelGap },
  };
}
