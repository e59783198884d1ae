import { type Channel, channelOf, type Pull } from '@pullbook/core/pull';
import { channelDisplay } from './channel-display.ts';
import type { RecordedLook, RecordedPage } from './model.ts';
import type { Showing } from './showing.ts';

/** Channels in the order they are read: the sweep first, then what it made, then what it lived on. */
const ORDER: readonly Channel['meaning'][] = [
  'engineSpeed',
  'throttle',
  'torque',
  'power',
  'boost',
  'manifoldPressure',
  'dischargePressure',
  'lambda',
  'airFuelRatio',
  'fuelFlow',
  'airFlow',
  'inletAirTemperature',
  'chargeTemperature',
];

/** Panels that a look may ask for: more would be neither read nor small on the wire. */
export const MOST_PANELS = 24;
/** Panels shown unasked. */
const FIRST_PANELS = 12;
/** And where no channel is understood. */
const FIRST_UNKNOWN = 6;

/** A channel that can be drawn, by its place in the pull: names may stand twice in a file. */
export interface RecordedChannel {
  id: string;
  channel: Channel;
}

/** What can be drawn over time or over engine speed, in the order of reading. */
export function recordedChannels(pull: Pull, over: RecordedLook['over']): RecordedChannel[] {
  const axis = channelOf(pull, over === 'speed' ? 'engineSpeed' : 'time');
  const place = ({ channel: { meaning } }: RecordedChannel) => {
    if (meaning === 'other') return ORDER.length + 1;
    return ORDER.includes(meaning) ? ORDER.indexOf(meaning) : ORDER.length;
  };
  return pull.channels
    .map((channel, index) => ({ id: `${index}`, channel }))
    .filter(
      ({ channel }) => channel !== axis && channel.meaning !== 'time' && channel.values.some(Number.isFinite),
    )
    .toSorted((one, other) => place(one) - place(other));
}

/** Those to draw: the asked ones, else those that mean something. */
export function channelsToShow(
  all: readonly RecordedChannel[],
  asked: RecordedLook['channels'],
): RecordedChannel[] {
  if (asked !== null) return all.filter(({ id }) => asked.includes(id)).slice(0, MOST_PANELS);
  const understood = all.filter(({ channel }) => channel.meaning !== 'other');
  return understood.length > 0 ? understood.slice(0, FIRST_PANELS) : all.slice(0, FIRST_UNKNOWN);
}

/** The list to choose from. */
export function channelChoice(
  all: readonly RecordedChannel[],
  shown: readonly RecordedChannel[],
  show: Showing,
): RecordedPage['channels'] {
  const ids = new Set(shown.map(({ id }) => id));
  return all.map(({ id, channel }) => {
    const { label, unit } = channelDisplay(channel, show);
    const name = label === channel.name ? label : `${label} (${channel.name})`;
    return { id, name, unit, understood: channel.meaning !== 'other', shown: ids.has(id) };
  });
}
