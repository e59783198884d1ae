import { figureOf, numberFigure, percentFigure, speedFigure } from '../quantity/index.ts';
import { joined, type Said, said } from '../remark/index.ts';
import { LIMIT_IDS, LIMITS, type LimitId, type LimitReading } from '../rule/index.ts';
import { changesFor } from './changes-for.ts';
import { type Judged, judged } from './judged.ts';
import type { LeastRemedy, ReachBreathing, ReachInput } from './model.ts';
import type { ScreenedOne } from './screen.ts';
import { type SearchGround, searchGround } from './search-ground.ts';

/** Ways that come nearest, of which it is asked how much better the engine would have to breathe. */
const NEAREST = 4;
/** Ways beyond limits that are looked at. */
const MOST_OVER = 12;
/** Share beyond which no better breathing is looked for: that is another engine. */
const MOST_BREATHING = 0.6;
/** Of the share found, and how often it is looked for. */
const TOLERANCE = 1e-4;
const MOST_LOOKS = 8;

/** A decimal would say more than any band does. */
const wholePower = (watt: number) => figureOf(watt, 'power', { decimals: 0 });

/** Why nothing reaches the target: the limit that stops most of what would, or that nothing of the list is fast enough. */
export function reasonOf({ target, standard }: ReachInput, found: readonly ScreenedOne[]): Said {
  const over = found.filter(({ reaches, holds }) => reaches && !holds);
  const best = Math.max(0, ...found.filter(({ holds }) => holds).map(({ figure }) => figure));
  const most = said`the most within all limits is ${wholePower(best)} of the ${wholePower(target.power)} asked for`;
  if (standard.factor <= 0 || over.length === 0)
    return best > 0
      ? said`Nothing that can be bought makes as much: ${most}.`
      : said`Nothing that was tried keeps within all limits that bind, the engine as it is not either.`;
  const counts = LIMIT_IDS.map((id) => ({
    id,
    count: over.filter(({ passed }) => passed.some((one) => one.id === id)).length,
  })).sort((a, b) => b.count - a.count);
  const [first] = counts;
  const passed = counts
    .filter(({ count }) => count === first!.count)
    .map(({ id }, place) => (place === 0 ? LIMITS[id].label : LIMITS[id].label.toLowerCase()));
  const which = said`${passed.join(' and ')} ${passed.length === 1 ? 'is' : 'are'} passed by ${first!.count} of the ${over.length} that would make it`;
  return best > 0
    ? said`${which}; ${most}.`
    : said`${which}, and nothing that was tried keeps within all limits that bind.`;
}

/** What would make the target possible, the least first: one limit alone that stood more, an engine that breathes better, or a lower target. */
export function remediesOf(ground: SearchGround, found: readonly ScreenedOne[]): LeastRemedy[] {
  return [...limitsMoved(ground, found), ...betterBreathing(ground, found)]
    .sort((a, b) => a.share - b.share || (a.what < b.what ? -1 : 1))
    .concat(lowerTarget(ground, found));
}

/**
 * What the limits that a way passes would have to stand, for the way that passes them least: by each limit that is passed most on some way. Ways that pass one
 * alone go before those that pass several.
 */
function limitsMoved(ground: SearchGround, found: readonly ScreenedOne[]): LeastRemedy[] {
  const least = new Map<LimitId, Judged>();
  for (const { picked } of nearestOver(found)) {
    const whole = judged(ground, picked);
    if (whole === null || !whole.reaches || whole.passed.length === 0) continue;
    const { id } = worstOf(whole);
    const known = least.get(id);
    if (known === undefined || isNearer(whole, known)) least.set(id, whole);
  }
  return [...least].map(([what, whole]) => ({
    what,
    said: capitalised(joined(whole.passed.map(limitSaid), ' and ')),
    share: -worstOf(whole).margin,
    changes: whole.made.changes,
  }));
}

/** Ways that reach the target beyond limits, by how far beyond. */
const nearestOver = (found: readonly ScreenedOne[]): ScreenedOne[] =>
  found
    .filter(({ reaches, passed }) => reaches && passed.length > 0)
    .map((one) => ({ one, most: Math.max(...one.passed.map(({ share }) => share)) }))
    .sort((a, b) => a.one.passed.length - b.one.passed.length || a.most - b.most)
    .slice(0, MOST_OVER)
    .map(({ one }) => one);

const worstOf = ({ passed }: Judged): LimitReading =>
  passed.reduce((worst, one) => (one.margin < worst.margin ? one : worst));

const isNearer = (one: Judged, other: Judged): boolean =>
  one.passed.length - other.passed.length < 0 ||
  (one.passed.length === other.passed.length && worstOf(one).margin > worstOf(other).margin);

/** `an impeller that its maker allows 55,400 rpm in place of 52,000 rpm` */
function limitSaid({ id, value, threshold, kind, stay }: LimitReading): Said {
  const figure = (one: number) =>
    kind === 'engineSpeed' ? speedFigure(one) : kind === 'ratio' ? numberFigure(one, 3) : figureOf(one, kind);
  const inPlace = said`${figure(value)} in place of ${figure(threshold)}`;
  const times = (more: number) => numberFigure(more, 2);
  // What would have to stand more, never that somebody should allow it more.
  if (id === 'impellerSpeed') return said`an impeller that its maker allows ${inPlace}`;
  if (id === 'injectors') return said`injectors that pass ${times(value / threshold)} times as much`;
  if (id === 'pump') return said`a fuel pump that gives ${times(threshold / value)} times as much`;
  if (id === 'belt') return said`a belt drive that holds ${times(value / threshold)} times as much`;
  if (id === 'block') return said`a short block that is trusted with ${inPlace}`;
  if (id === 'boostCap') return said`a boost cap of ${inPlace}`;
  if (id === 'spark')
    return said`a fuel, or a cooler charge, that allows ${figure(threshold)} of advance in place of ${figure(value)}`;
  if (id === 'fuelAndCompression')
    return said`a fuel, a cooler or a compression ratio that goes with ${figure(value)} of boost in place of ${figure(threshold)}`;
  const ends = stay === 'below' ? 'up to' : 'down to';
  return said`${LIMITS[id].label.toLowerCase()} allowed ${ends} ${inPlace}`;
}

const capitalised = (one: Said): Said => {
  const [first, ...rest] = one.parts;
  return typeof first === 'string'
    ? joined([`${first.charAt(0).toUpperCase()}${first.slice(1)}`, ...rest], '')
    : one;
};

/** The share by which an engine within its limits would have to swallow more at all speeds. */
function betterBreathing(ground: SearchGround, found: readonly ScreenedOne[]): LeastRemedy[] {
  const nearest = found
    .filter(({ holds }) => holds)
    .sort((a, b) => b.figure - a.figure)
    .slice(0, NEAREST);
  const shares = nearest.flatMap((one) => {
    const needed = shareNeeded(ground.input, one);
    return needed === null ? [] : [needed];
  });
  const [least] = shares.sort((a, b) => a.share - b.share);
  return least === undefined
    ? []
    : [
        {
          what: 'breathing',
          said: said`An engine that swallows ${percentFigure(least.share, 1)} more air from the same manifold at all speeds`,
          share: least.share,
          changes: least.one.made.changes,
        },
      ];
}

function shareNeeded(
  input: ReachInput,
  { picked, figure }: ScreenedOne,
): { share: number; one: Judged } | null {
  const asked = input.target.power;
  const at = (share: number): Judged | null => {
    const ground = searchGround({ ...input, breathing: [...input.breathing, better(share)] });
    return judged(ground, { ...picked, breathing: [...picked.breathing, input.breathing.length] });
  };
  // Power goes nearly with the air, so that a few looks along the slope are through.
  let before = { share: 0, figure };
  let share = asked / figure - 1;
  for (let look = 0; look < MOST_LOOKS && share <= MOST_BREATHING; look++) {
    const one = at(share);
    if (one === null) return null;
    const slope = (one.figure - before.figure) / (share - before.share);
    if (!(slope > 0)) return null;
    const short = (asked - one.figure) / slope;
    if (one.reaches && -short <= TOLERANCE) return one.holds ? { share, one } : null;
    before = { share, figure: one.figure };
    share += short + TOLERANCE / 2;
  }
  return null;
}

/** A gain in breathing that nobody has stated: what it would take. */
const better = (share: number): ReachBreathing => ({
  id: 'what it would take',
  name: said`${percentFigure(share, 1)} more air swallowed at all speeds`.text,
  engineSpeedRpm: [0],
  factor: [1 + share],
  spread: 0,
  ground: 'rule of thumb',
  from: said`what it would take`,
  edits: [],
  cost: 3,
  pullIds: [],
});

/** What can be had. */
function lowerTarget(ground: SearchGround, found: readonly ScreenedOne[]): LeastRemedy[] {
  const { target } = ground.input;
  const best = found
    .filter(({ holds }) => holds)
    .reduce<ScreenedOne | null>(
      (most, one) => (most === null || one.figure > most.figure ? one : most),
      null,
    );
  if (best === null || !(best.figure < target.power)) return [];
  return [
    {
      what: 'target',
      said: said`A target of ${wholePower(best.figure)} in place of ${wholePower(target.power)}: the most within all limits`,
      share: 1 - best.figure / target.power,
      changes: changesFor(ground, best.picked, best.follows),
    },
  ];
}
