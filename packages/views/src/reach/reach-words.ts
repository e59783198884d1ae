import { writeSaid } from '@pullbook/core/quantity';
import type { Banded, CostClass, ReachTarget, Rung } from '@pullbook/core/reach';
import type { SaidParts } from '@pullbook/core/remark';
import { bandText } from '../band-text.ts';
import type { ViewOptions } from '../model.ts';
import type { Showing } from '../showing.ts';
import { inSentence, listed } from '../wording.ts';

/** `520 hp`, `480 hp at 6,000 rpm`, `450 hp on average from 3,000 to 6,500 rpm`; with its boost cap, where it has one. */
export function targetText(show: Showing, target: ReachTarget, { cap = true } = {}): string {
  const within =
    cap && target.boostCap !== null ? ` within ${boostText(show, target.boostCap)} of boost` : '';
  return `${show.power(target.power)}${whereText(show, target)}${within}`;
}

/** Of which figure the target is: ` at 6,000 rpm`; '' the highest. */
export function whereText(show: Showing, { what, atRpm, windowRpm }: ReachTarget): string {
  if (what === 'power at a speed' && atRpm !== null) return ` at ${show.speed(atRpm)}`;
  if (what === 'average power' && windowRpm !== null) return ` on average from ${show.speedRange(windowRpm)}`;
  return '';
}

export const boostText = (show: Showing, pascal: number): string =>
  show.quantity(pascal, 'gaugePressure', { decimals: 1 });

/** While bands are still to come a figure has itself for its ends. */
export const hasBand = ({ low, high }: Banded): boolean =>
  Number.isFinite(low) && Number.isFinite(high) && low < high;

/** `505 to 551`, rounded outward; '' without one. */
export const powerBand = (show: Showing, of: Banded): string =>
  hasBand(of) ? bandText(show, [of.low, of.high]) : '';

/** `528 hp (505 to 551)` */
export function powerWithBand(show: Showing, of: Banded): string {
  const band = powerBand(show, of);
  return `${show.power(of.value)}${band === '' ? '' : ` (${band})`}`;
}

/** `9.7 to 11.1`; '' without one. */
export function boostBand(show: Showing, of: Banded): string {
  if (!hasBand(of)) return '';
  const number = (pascal: number) => show.number(pascal, 'gaugePressure', { decimals: 1 });
  return `${number(of.low)} to ${number(of.high)}`;
}

const CHANCES: readonly [from: number, words: string][] = [
  [0.95, 'very likely'],
  [0.75, 'likely'],
  [0.55, 'more likely than not'],
  [0.45, 'as likely as not'],
  [0.25, 'less likely than not'],
  [0.05, 'unlikely'],
  [0, 'very unlikely'],
];

/** `likely, 84 of 100`; '' while there is no band. */
export function chanceText({ reached, chance }: Rung): string {
  if (!hasBand(reached) || !Number.isFinite(chance)) return '';
  const words = CHANCES.find(([from]) => chance >= from)?.[1] ?? 'very unlikely';
  const count = Math.round(100 * chance);
  if (count >= 100) return `${words}, more than 99 of 100`;
  return count <= 0 ? `${words}, less than 1 of 100` : `${words}, ${count} of 100`;
}

/** It reaches the target on the figure alone: more draws miss it than make it. */
export const isBarely = ({ reached, chance }: Rung): boolean => hasBand(reached) && chance < 0.5;

/** Of ways that do not reach, the one that comes nearest within the limits; `null`: none keeps within. */
export function nearestOf(rungs: readonly Rung[]): Rung | null {
  const within = rungs.filter(({ bindsFirst: limit }) => limit === null || !limit.binds || limit.margin >= 0);
  return within.reduce<Rung | null>(
    (best, rung) => (best === null || rung.reached.value > best.reached.value ? rung : best),
    null,
  );
}

const COSTS = [
  'no cost',
  'small cost',
  'modest cost',
  'considerable cost',
  'large cost',
  'an engine’s worth',
];

/** What a cost class is called; the shop's own classes, not money. */
export const costText = (cost: CostClass): string => COSTS[cost] ?? '';

/** What one has to do, without its full stop: `blower pulley 80 mm in place of 84 mm and longer cam`. */
export function changesText({ changes }: Pick<Rung, 'changes'>, options: ViewOptions): string {
  const words = changes.map(({ said }) => inSentence(phrase(said, options)));
  // Commas between things that have commas of their own would be read as more things.
  return words.some((one) => one.includes(', ')) ? words.join('; ') : listed(words);
}

/** A said thing in the units shown, to stand inside a sentence. */
export const phrase = (said: { text: string; parts?: SaidParts }, options: ViewOptions): string =>
  writeSaid(said.text, said.parts, options).replace(/\.$/u, '');

/** The same as a sentence of its own. */
export const sentenceOf = (said: { text: string; parts?: SaidParts }, options: ViewOptions): string => {
  const text = writeSaid(said.text, said.parts, options);
  return text === '' || /[.!?]$/u.test(text) ? text : `${text}.`;
};
