import { accepted, type Remark, type Result, refused, remark } from '../remark/index.ts';
import { MEANINGS } from './meanings.ts';
import type { Channel, ChannelMeaning, Pull } from './model.ts';

/** First channel of that meaning, `null` where the pull has none. */
export function channelOf(pull: Pick<Pull, 'channels'>, meaning: ChannelMeaning): Channel | null {
  return pull.channels.find((channel) => channel.meaning === meaning) ?? null;
}

/** Values by meaning, the first channel of each; a remark names what was passed over. `other` is left out. */
export function valuesByMeaning(channels: readonly Channel[]): {
  values: Map<ChannelMeaning, Float64Array>;
  remarks: Remark[];
} {
  const used = new Map<ChannelMeaning, Channel>();
  const passedOver = new Map<ChannelMeaning, string[]>();
  for (const channel of channels) {
    if (channel.meaning === 'other') continue;
    const first = used.get(channel.meaning);
    if (first === undefined) used.set(channel.meaning, channel);
    else passedOver.set(channel.meaning, [...(passedOver.get(channel.meaning) ?? []), channel.name]);
  }
  const remarks = [...passedOver].map(([meaning, names]) => givenTwice(used.get(meaning)!, names));
  const values = new Map([...used].map(([meaning, channel]) => [meaning, channel.values] as const));
  return { values, remarks };
}

/** Never a mean of them that nobody asked for: eight exhaust probes say eight things. */
function givenTwice(first: Channel, names: readonly string[]): Remark {
  const quoted = names.map((name) => `"${name}"`);
  const others = quoted.length === 1 ? quoted[0] : `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1)}`;
  const label = MEANINGS[first.meaning].label.toLowerCase();
  return remark(
    'note',
    'meaning-given-twice',
    `${others} ${names.length === 1 ? 'is' : 'are'} read as ${label} too; the curve uses "${first.name}", the first. All are kept. Give "${first.name}" another meaning to use another.`,
  );
}

/** The channels of a pull, when they can make a curve: an engine speed, and torque or power, of one length. */
export function curveChannels(pull: Pull): Result<{ speed: Channel; rowCount: number }> {
  const speed = channelOf(pull, 'engineSpeed');
  if (speed === null)
    return refused(
      remark(
        'refusal',
        'no-engine-speed',
        `"${pull.name}" has no engine speed among its ${pull.channels.length} columns, so no curve can be drawn. ` +
          'Say which column is the engine speed.',
      ),
    );
  const odd = pull.channels.find((channel) => channel.values.length !== speed.values.length);
  if (odd !== undefined)
    throw new Error(`channel ${odd.name} has ${odd.values.length} rows, engine speed ${speed.values.length}`);
  return accepted({ speed, rowCount: speed.values.length });
}
