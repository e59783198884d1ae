import type { Channel } from '@pullbook/core/pull';
import type { Rows } from '../connection.ts';
import { bytesFromSamples, samplesFromBytes } from '../samples.ts';

export async function readChannels(rows: Rows, pullId: string): Promise<Channel[]> {
  const found = await rows
    .selectFrom('channel')
    .selectAll()
    .where('pullId', '=', pullId)
    .orderBy('place')
    .execute();
  return found.map(({ meaning, name, unit, kind, origin, samples }) => ({
    meaning,
    name,
    unit,
    kind,
    values: samplesFromBytes(samples),
    origin,
  }));
}

/** Before the row of their pull: the book takes no channel for a pull that is there already. */
export async function insertChannels(
  rows: Rows,
  pullId: string,
  channels: readonly Channel[],
): Promise<void> {
  for (const [place, { meaning, name, unit, kind, origin, values }] of channels.entries()) {
    await rows
      .insertInto('channel')
      .values({
        pullId,
        place,
        meaning,
        name,
        unit,
        kind,
        origin,
        count: values.length,
        samples: bytesFromSamples(values),
      })
      .execute();
  }
}
