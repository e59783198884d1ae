import { unitFor } from '@pullbook/core/quantity';
import type { WhatIsLeft } from '@pullbook/core/reach';
import type { SentencePart, ShownTable } from '../model.ts';
import type { ShownLeft } from '../reach-model.ts';
import type { Showing } from '../showing.ts';
import { capitalised, inSentence } from '../wording.ts';
import { limitThreshold, limitValue } from './limit-words.ts';
import type { ReachInView } from './reach-in-view.ts';
import { powerWithBand } from './reach-words.ts';
import { computedFrom } from './sources.ts';

const MILLIMETRE = unitFor('mm', 'length')!;

/** What is left in each supercharger: how fast it may be turned, what it then makes, what stops it. */
export const whatIsLeft = (view: ReachInView): ShownLeft[] =>
  view.left.map((left) => ({
    name: nameOf(left),
    sentence: sentenceOf(view, left),
    buyable: buyableText(view, left),
    stops: stopsTable(view, left),
    from: computedFrom(view, left),
  }));

/** What of: a supercharger that has no name goes by its engine. */
function nameOf({ name }: WhatIsLeft): string {
  if (name === 'as it is') return 'The supercharger that is fitted';
  return name.startsWith('of “') ? `The supercharger ${name}` : capitalised(name);
}

/** `Turned 7.54 times as fast as the engine in place of 7.07 (a blower pulley of 78.8 mm) this supercharger makes 524 hp (501 to 547); stopped there by impeller speed, at its limit of 52,000 rpm at 6,900 rpm.` */
function sentenceOf(view: ReachInView, left: WhatIsLeft): SentencePart[] {
  const { show } = view;
  const { overallRatio, peakPower, blowerPulleyDiameter } = left.most;
  const ratio = show.number(overallRatio, 'ratio', { decimals: 2 });
  const drive = buildOf(view, left)?.match?.input.drive;
  const now = drive === undefined ? null : drive.pulleyRatio * drive.stepUp;
  const before = now === null ? '' : ` in place of ${show.number(now, 'ratio', { decimals: 2 })}`;
  const pulley =
    blowerPulleyDiameter === null ? '' : ` (a blower pulley of ${pulleyText(show, blowerPulleyDiameter)})`;
  return [
    { text: `Turned ${ratio} times as fast as the engine${before}${pulley} this supercharger makes ` },
    { text: powerWithBand(show, peakPower), strong: true },
    { text: stopText(show, left) },
  ];
}

/** Further past its limit than a search's last step, it was past it from the slowest ratio on. */
const PAST = -0.005;

function stopText(show: Showing, { stoppedBy }: WhatIsLeft): string {
  if (stoppedBy === null) return '; no limit that is known stops it there.';
  const label = inSentence(stoppedBy.label);
  const at = stoppedBy.engineSpeedRpm === null ? '' : ` at ${show.speed(stoppedBy.engineSpeedRpm)}`;
  const threshold = limitThreshold(show, stoppedBy);
  if (stoppedBy.margin < PAST)
    return `; a limit is passed even so: ${label}, ${limitValue(show, stoppedBy)} where ${threshold} is allowed${at}.`;
  return `; stopped there by ${label}, at its limit of ${threshold}${at}.`;
}

const buildOf = ({ bundle }: ReachInView, { buildId }: WhatIsLeft) =>
  bundle?.input.builds.find(({ id }) => id === buildId);

/** Pulleys are sold by the millimetre: both are said where inches are shown. */
export function pulleyText(show: Showing, metres: number): string {
  const isWhole = Math.abs(1000 * metres - Math.round(1000 * metres)) < 1e-6;
  const millimetres = show.quantity(metres, 'length', { unit: MILLIMETRE, decimals: isWhole ? 0 : 1 });
  if (show.options.units === 'si') return millimetres;
  return `${show.quantity(metres, 'length', { decimals: 2 })}, ${millimetres}`;
}

function buyableText({ show }: ReachInView, { buyable }: WhatIsLeft): string {
  if (buyable === null) return 'No pulley of the list keeps within the limits.';
  const pulley = pulleyText(show, buyable.blowerPulleyDiameter);
  return `The smallest blower pulley of the list within the limits is ${pulley}: ${powerWithBand(show, buyable.peakPower)} at ${show.speed(buyable.peakPower.atRpm)}.`;
}

function stopsTable({ show }: ReachInView, { stops }: WhatIsLeft): ShownTable | null {
  if (stops.length === 0) return null;
  const columns = [
    'Overall ratio there',
    'Highest power there',
    'Value',
    'Allowed',
    'At engine speed',
    'Limit from',
  ];
  return {
    id: 'stops',
    title: 'Where each limit would stop it',
    columns: columns.map((text) => ({ text, combination: null })),
    rows: stops.map(({ limit, overallRatio, peakPower }) => ({
      name: limit.label,
      unit: '',
      cells: [
        show.number(overallRatio, 'ratio', { decimals: 2 }),
        show.power(peakPower),
        limitValue(show, limit),
        limitThreshold(show, limit),
        limit.engineSpeedRpm === null ? '' : show.speed(limit.engineSpeedRpm),
        limit.source,
      ],
    })),
  };
}
