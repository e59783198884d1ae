import { formatNumber } from '@pullbook/core/quantity';
import { type Axis, roomyAxis, roundTicks, sharedAxis } from './axis.ts';
import type { Box } from './columns.ts';
import { type EndLabel, endLabels, labelsWidth } from './end-labels.ts';
import type { ChartDescription } from './model.ts';
import { type NameRows, nameRows, nameRowsHeight } from './name-rows.ts';
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
  names: NameRows;
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
/** Pictures of one set keep this share of the width for what stands at the lines' ends, whatever it is. */
const SHARED_LABEL_SHARE = 0.26;
/** And room for a figure of so many digits before the axis. */
const SHARED_FIGURE = '0,000';

/** Figures on the axis are signed where a panel shows differences. */
export const isDifference = (panel: PreparedPanel['panel']): boolean =>
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
  const onTop = unnamed && !compact && beside.names.named.length === 0;
  return onTop ? layoutWith(chart, prepared, frame, proportions, { hasCursor, namesOnTop: true }) : beside;
}

function axisOf({ panel, reach, marks }: PreparedPanel, lengthPx: number, proportions: Proportions): Axis {
  const { text, compact } = proportions;
  const asked = panel.reach;
  const drawn = reach ?? asked;
  if (!drawn) return { range: [0, 1], ticks: [], decimals: 0 };
  const low = Math.min(drawn[0], asked?.[0] ?? drawn[0], panel.zeroLine ? 0 : drawn[0]);
  const high = Math.max(drawn[1], asked?.[1] ?? drawn[1], panel.zeroLine ? 0 : drawn[1]);
  const nearestPx = 1.4 * text;
  if (asked) return sharedAxis([low, high], { lengthPx, nearestPx });
  const headroomPx = marks.length > 0 && !compact ? 1.3 * text : 0;
  return roomyAxis([low, high], { lengthPx, nearestPx, headroomPx });
}

function layoutWith(
  chart: ChartDescription,
  prepared: PreparedPanel[],
  frame: Box,
  proportions: Proportions,
  { hasCursor, namesOnTop }: { hasCursor: boolean; namesOnTop: boolean },
): StackLayout {
  const { text, narrow, compact, title, gap, ticks, labelGap } = proportions;
  const isOfSet = chart.panels.some(({ reach }) => reach);
  const windowLane = chart.xWindow && !compact ? proportions.windowLane : 0;
  const lane = windowLane + (hasCursor && !compact ? proportions.cursorLane : 0);
  const width = frame.right - frame.left;
  const lines = chart.panels.flatMap((panel) => panel.lines);
  const names = nameRows(namesOnTop ? lines : [], width, proportions);
  // Those that are only counted are not named beside their lines either: they have no room there.
  const onTop = namesOnTop ? lines.filter(({ style }) => style !== 'ink') : [];
  const saidNames = new Set(onTop.flatMap(({ label }) => label?.key ?? []));

  // Heights first: they decide the ticks, the ticks the left margin, the labels the right one.
  const above = frame.top + nameRowsHeight(names, proportions);
  const free = frame.bottom - ticks - above - lane - prepared.length * title - (prepared.length - 1) * gap;
  const shares = prepared.reduce((sum, { panel }) => sum + panel.share, 0);
  let y = above + lane;
  const panels = prepared.map((one): LaidPanel => {
    const top = y + title;
    const bottom = top + Math.max(LEAST_PANEL_EM * text, (free * one.panel.share) / shares);
    y = bottom + gap;
    const axis = axisOf(one, bottom - top, proportions);
    const sign = isDifference(one.panel);
    const decimals = Math.max(axis.decimals, one.panel.decimals);
    const tickTexts = axis.ticks.map((tick) =>
      formatNumber(tick, decimals, chart.decimalMark, { sign, thousands: true }),
    );
    const labels = endLabels(
      one,
      {
        widthPx: (isOfSet && !narrow ? SHARED_LABEL_SHARE : MOST_LABEL_SHARE) * width - labelGap,
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
    isOfSet && !narrow ? textWidth(SHARED_FIGURE, text, 'sans') : 0,
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
  const sharedRoom = isOfSet && !narrow ? SHARED_LABEL_SHARE * width : 0;
  const wantedMargin = Math.max(unitRoom, sharedRoom, labelRoom > 0 ? labelGap + labelRoom + 1 : 0);
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
    names,
    saidNames,
    panels,
    xAxis,
    xTickTexts: xAxis.ticks.map((tick) => xText(tick, xAxis.decimals)),
    labels: { x: right + labelGap, widthPx: frame.right - right - labelGap },
  };
}
