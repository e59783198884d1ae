import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { editDistance } from '@pullbook/formats';

const ALL = Object.keys(MEANINGS) as ChannelMeaning[];

/**
 * A channel's meaning by its id or its label, spaces, hyphens and case forgiven; `undefined` where there is none.
 *
 * @example meaningByName('engine speed') // 'engineSpeed'
 */
export function meaningByName(text: string): ChannelMeaning | undefined {
  const wanted = plain(text);
  return ALL.find((id) => plain(id) === wanted || plain(MEANINGS[id].label) === wanted);
}

/** All meanings for a message, those that look like the text first. */
export function meaningsLike(text: string): ChannelMeaning[] {
  const distance = new Map(ALL.map((id) => [id, editDistance(id, text.trim())]));
  return ALL.toSorted((one, other) => distance.get(one)! - distance.get(other)!);
}

const plain = (text: string): string => text.toLowerCase().replace(/[\s_-]/g, '');
