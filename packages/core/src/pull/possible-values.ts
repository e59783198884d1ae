import { numberFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { MEANINGS } from './meanings.ts';
import type { Channel, ChannelMeaning } from './model.ts';

/** No engine on a brake reaches these, inside units; far beyond what is merely unusual. */
const POSSIBLE: Partial<Record<ChannelMeaning, [low: number, high: number]>> = {
  engineSpeed: [0, 50_000],
  torque: [-1e5, 1e5],
  power: [-1e8, 1e8],
};
/** Slower than this the engine stands. */
const TURNING_RPM = 1;

/**
 * Channels with impossible figures taken as missing, and a caution that counts them. Figures that are only unusual stay.
 * An engine that stands has no engine speed: its rows are idle time, not worth a remark.
 */
export function possibleValues(channels: readonly Channel[]): { channels: Channel[]; remarks: Remark[] } {
  const remarks: Remark[] = [];
  const possible = channels.map((channel) => {
    const [low, high] = POSSIBLE[channel.meaning] ?? [-Number.MAX_VALUE, Number.MAX_VALUE];
    const odd: number[] = [];
    for (let row = 0; row < channel.values.length; row++) {
      const value = channel.values[row]!;
      if (!(value >= low && value <= high) && !Number.isNaN(value)) odd.push(row);
    }
    if (odd.length > 0) remarks.push(impossible(channel, odd));
    const stands = channel.meaning === 'engineSpeed' ? TURNING_RPM : Number.NEGATIVE_INFINITY;
    const everStands = channel.meaning === 'engineSpeed' && channel.values.some((value) => value < stands);
    if (odd.length === 0 && !everStands) return channel;
    const values = channel.values.map((value) => (value < stands ? Number.NaN : value));
    for (const row of odd) values[row] = Number.NaN;
    return { ...channel, values };
  });
  return { channels: possible, remarks };
}

function impossible(channel: Channel, rows: readonly number[]): Remark {
  const value = channel.values[rows[0]!]!;
  const shown = Math.abs(value) < 1e9 ? numberFigure(value, 0) : value.toExponential(1);
  return remark(
    'caution',
    'impossible-values',
    said`${MEANINGS[channel.meaning].label} ("${channel.name}") has ${rows.length === 1 ? 'an impossible figure' : `${rows.length} impossible figures`}, ${rows.length === 1 ? '' : 'the first '}${shown} in row ${rows[0]! + 1} (inside units), taken as missing. Check the unit and the meaning of the column.`,
  );
}
