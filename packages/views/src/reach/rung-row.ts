import type { Rung } from '@pullbook/core/reach';
import type { ShownChange, ShownRung } from '../reach-model.ts';
import { capitalised, counted, inSentence } from '../wording.ts';
import { limitLine } from './limit-words.ts';
import type { ReachInView } from './reach-in-view.ts';
import { chanceText, changesText, costText, isBarely, phrase, powerBand } from './reach-words.ts';
import { sourceOfChange } from './sources.ts';

/** A way as a row of the ladder; `number` 0: as it is now. */
export function rungRow(view: ReachInView, rung: Rung, number: number): ShownRung {
  const { show, options } = view;
  const how = changesText(rung, options);
  const title = number === 0 ? 'As it is now' : capitalised(how);
  const reached = show.power(rung.reached.value);
  const band = powerBand(show, rung.reached);
  const chance = chanceText(rung);
  const state = stateText(view, rung);
  const bindsFirst = rung.bindsFirst === null ? '' : limitLine(show, rung.bindsFirst);
  const cautions = rung.limits.filter(({ binds, margin }) => !binds && margin < 0).length;
  const cost = costText(rung.cost.highest);
  const spoken = [
    `${title}: ${reached}${band === '' ? '' : `, ${band}`}`,
    chance,
    state,
    cost,
    bindsFirst === '' ? '' : `binds first: ${bindsFirst}`,
    cautions === 0 ? '' : counted(cautions, 'caution'),
  ];
  return {
    id: number === 0 ? 'now' : rung.id,
    number: number === 0 ? '' : `${number}`,
    title,
    changes: rung.changes.map((change) => shownChange(view, rung, change)),
    reached,
    band,
    chance,
    state,
    reaches: rung.reaches,
    cost,
    bindsFirst,
    cautions,
    ground: rung.ground,
    spoken: `${spoken.filter((part) => part !== '').join('; ')}.`,
  };
}

function shownChange(view: ReachInView, rung: Rung, change: Rung['changes'][number]): ShownChange {
  return {
    part: change.part,
    text: capitalised(phrase(change.said, view.options)),
    cost: costText(change.cost),
    ground: change.ground,
    from: sourceOfChange(view, rung, change),
  };
}

/** `reaches the target`, `8 hp short`, `passes the limit: impeller speed` */
function stateText({ show, target }: ReachInView, rung: Rung): string {
  const { reaches, reached, bindsFirst, limits } = rung;
  if (reaches) return isBarely(rung) ? 'barely reaches the target' : 'reaches the target';
  const passed = [bindsFirst, ...limits].find((limit) => limit?.binds === true && limit.margin < 0);
  if (passed) return `passes a limit: ${inSentence(passed.label)}`;
  const short = target.power - reached.value;
  return short > 0 ? `${show.power(short)} short` : '';
}
