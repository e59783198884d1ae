import type { Rung } from '@pullbook/core/reach';
import type { ShownLimit } from '../reach-model.ts';
import { leftWords, limitState, limitValue, thresholdWords } from './limit-words.ts';
import type { ReachInView } from './reach-in-view.ts';
import { sentenceOf } from './reach-words.ts';
import { sourceOfLimit } from './sources.ts';

/** Every limit that was looked at: those that bind first, then those that caution, each by what is left. */
export function limitRows(view: ReachInView, { limits }: Rung): ShownLimit[] {
  const { show, options } = view;
  return limits
    .toSorted((one, other) => Number(other.binds) - Number(one.binds) || one.margin - other.margin)
    .map((limit) => ({
      id: limit.id,
      label: limit.label,
      value: limitValue(show, limit),
      threshold: thresholdWords(show, limit),
      left: leftWords(show, limit),
      at: limit.engineSpeedRpm === null ? '' : show.speed(limit.engineSpeedRpm),
      kind: limit.binds ? 'binds' : 'cautions',
      state: limitState(limit),
      text: sentenceOf(limit.said, options),
      from: sourceOfLimit(view, limit),
    }));
}
