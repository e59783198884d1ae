import type { Rung } from '@pullbook/core/reach';
import type { LimitId } from '@pullbook/core/rule';
import type { ShownLimit } from '../reach-model.ts';
import { leftWords, limitState, limitValue, thresholdWords } from './limit-words.ts';
import type { ReachInView } from './reach-in-view.ts';
import { sentenceOf } from './reach-words.ts';
import { sourceOfLimit } from './sources.ts';

/** What these are is told by the sheet and an engine speed, whatever the engine makes. */
const OF_THE_SHEET: readonly LimitId[] = ['impellerSpeed', 'tipSpeed', 'pistonSpeed', 'ringGap', 'plugGap'];

/** Every limit that was looked at: those that bind first, then those that caution, each by what is left. */
export function limitRows(view: ReachInView, rung: Rung): ShownLimit[] {
  const { show, options } = view;
  return rung.limits
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
      restsOn: OF_THE_SHEET.includes(limit.id) ? 'reckoned from the sheet' : rung.ground,
      from: sourceOfLimit(view, rung, limit),
    }));
}
