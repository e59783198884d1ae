import { channelOf, type Pull, type PullView } from '@pullbook/core/pull';
import type { RecordedLook, RecordedPage, ViewOptions } from './model.ts';
import { recordedAxis } from './recorded-axis.ts';
import { channelChoice, channelsToShow, recordedChannels } from './recorded-channels.ts';
import { recordedChart } from './recorded-chart.ts';
import { cursorRows, recordedCursor, windowStepsOf } from './recorded-cursor.ts';
import { showingIn } from './showing.ts';

export { MOST_PANELS, recordedChannels } from './recorded-channels.ts';

/**
 * A pull's channels as recorded, over time or engine speed: what the screen draws, the exact figures at its cursor, and
 * what else could be shown.
 *
 * @example recordedPage(pull, view, { over: 'speed', range: [3000, 6500], channels: null }, options)
 */
export function recordedPage(
  pull: Pull,
  view: PullView,
  look: RecordedLook,
  options: ViewOptions,
): RecordedPage {
  const show = showingIn(options);
  const all = recordedChannels(pull, look.over);
  const shown = channelsToShow(all, look.channels);
  const axis = recordedAxis(pull, look.over, show.unit('engineSpeed'));
  const rows = axis ? cursorRows(view, axis, look.range) : [];
  return {
    over: look.over,
    hasTime: channelOf(pull, 'time') !== null,
    hasSpeed: recordedAxis(pull, 'speed', '') !== null,
    chart: axis && recordedChart(pull, view, axis, shown, look.range, show),
    cursor: axis && recordedCursor(rows, axis, shown, show),
    windowSteps: axis ? windowStepsOf(pull, view, axis, rows) : { at: [], engineSpeedRpm: [] },
    channels: channelChoice(all, shown, show),
  };
}
