import type { Baseline } from '@pullbook/core/airpath';
import type { ReachChange, Rung } from '@pullbook/core/reach';
import type { LimitFinding } from '@pullbook/core/rule';
import type { NamedSource, ReachLink, ShownSource } from '../reach-model.ts';
import { capitalised, counted, listed } from '../wording.ts';
import type { ReachInView } from './reach-in-view.ts';
import { sentenceOf } from './reach-words.ts';

/** A name shorter than this would be found in words that mean something else. */
const SHORTEST_NAME = 3;
/** More pulls than these are counted, not named. */
const MOST_NAMED = 3;

/** Links to pulls, combinations or maps by their ids, in the order given, each once; those that have no name here are left out. */
export function linksTo({ sources }: ReachInView, ids: readonly string[]): ReachLink[] {
  return [...new Set(ids)].flatMap((id) => {
    const source = sources.find((one) => one.id === id);
    return source === undefined ? [] : [linkTo(source)];
  });
}

const linkTo = ({ kind, id, name }: NamedSource): ReachLink => ({ kind, id, text: name });

/** `base 1 and base 2`, `5 pulls` */
export function pullsText({ sources }: ReachInView, ids: readonly string[]): string {
  const names = ids.flatMap((id) => sources.find((one) => one.id === id)?.name ?? []);
  return names.length === ids.length && names.length <= MOST_NAMED
    ? listed(names)
    : counted(ids.length, 'pull');
}

/** What the curve of a build was computed from. */
export function computedFrom(view: ReachInView, { buildId }: Pick<Rung, 'buildId'>): ShownSource {
  const { bundle, answer, kept } = view;
  const drawn = bundle === null ? '' : `; band of ${bundle.input.draws} draws, seed ${bundle.input.seed}`;
  if (bundle === null) {
    const pullIds = kept?.enquiry.pullIds ?? [];
    const made =
      kept === null ? '' : `, version ${kept.enquiry.madeBy.version}, seed ${kept.enquiry.madeBy.seed}`;
    return {
      text: `Computed from ${counted(pullIds.length, 'pull')} of the book${made}.`,
      links: linksTo(view, pullIds),
    };
  }
  const build = bundle.input.builds.find(({ id }) => id === buildId);
  const baseline = build?.match?.input.baseline ?? bundle.input.baseline;
  const fitted = build?.fit?.pullIds ?? [];
  const isPlain = build?.match === null || build === undefined;
  const carried = isPlain
    ? ''
    : fitted.length > 0
      ? `, fitted to ${pullsText(view, fitted)}`
      : ', not fitted to a boosted pull';
  return {
    text: `${isPlain ? 'Carried' : 'Matched'} from ${baselineText(view, baseline)}${carried}${answer === null ? '' : drawn}.`,
    links: [
      ...linksTo(view, [...baseline.pullIds, ...fitted]),
      ...(view.combinationId === null || isPlain || !build.isPresent
        ? []
        : [{ kind: 'match', id: view.combinationId, text: 'the match' } as const]),
    ],
  };
}

function baselineText(view: ReachInView, { origin, pullIds }: Baseline): string {
  const pulls = pullIds.length === 0 ? '' : ` (${pullsText(view, pullIds)})`;
  if (origin === 'scaled') return `a scaled baseline, not a measured one${pulls}`;
  return origin === 'measured' ? `naturally aspirated pulls${pulls}` : 'the baseline that was given';
}

/** What a change of a rung rests on: its own words, with what of the book they name and the pulls that show it. */
export function sourceOfChange(view: ReachInView, rung: Rung, change: ReachChange): ShownSource {
  const shownBy = pullsBehind(view, rung, change);
  const named = namedIn(view, `${change.said.text} ${change.from.text}`);
  const isOfTheList = change.part !== 'speedLimit' && !(change.part === 'breathing' && shownBy.length > 0);
  const links = [...named, ...linksTo(view, shownBy)];
  return {
    text: capitalised(sentenceOf(change.from, view.options)),
    links: [
      ...links.filter(({ id }, place) => links.findIndex((one) => one.id === id) === place),
      ...(isOfTheList ? [{ kind: 'parts', id: '', text: 'the parts list' } as const] : []),
    ],
  };
}

/** Pulls that show a gain of breathing, or that the match was fitted to by which the rest is scaled. */
function pullsBehind(
  { bundle }: ReachInView,
  { buildId }: Rung,
  { part, ground, from }: ReachChange,
): string[] {
  if (part === 'breathing')
    return bundle?.input.breathing.find((one) => one.from.text === from.text)?.pullIds ?? [];
  if (ground === 'rule of thumb') return [];
  return bundle?.input.builds.find(({ id }) => id === buildId)?.fit?.pullIds ?? [];
}

/** Things of the book whose name stands in a text. */
function namedIn({ sources }: ReachInView, text: string): ReachLink[] {
  return sources.filter(({ name }) => name.length >= SHORTEST_NAME && standsIn(text, name)).map(linkTo);
}

/** Between signs that are no letters and no digits: `cam 1` does not stand in `cam 12`. */
function standsIn(text: string, name: string): boolean {
  const isPart = (sign: string) => /[\p{L}\p{N}]/u.test(sign);
  for (let at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1))
    if (!isPart(text.charAt(at - 1)) && !isPart(text.charAt(at + name.length))) return true;
  return false;
}

/** Lines of a sheet that come with another supercharger. */
const OF_A_SUPERCHARGER = /^the sheet: (?:Supercharger|Drive|Cooler)\b/u;

/** Where a limit's threshold comes from, with the rule that looks at it. */
export function sourceOfLimit(view: ReachInView, rung: Rung, limit: LimitFinding): ShownSource {
  const { combinationId, name } = view;
  const fitted = rung.changes.find(({ part }) => part === 'supercharger');
  const own: ReachLink[] =
    combinationId === null ? [] : [{ kind: 'combination', id: combinationId, text: name }];
  const sheet =
    fitted !== undefined && OF_A_SUPERCHARGER.test(limit.source)
      ? namedIn(view, fitted.from.text).filter(({ kind }) => kind === 'combination')
      : /\bsheet\b/u.test(limit.source)
        ? own
        : [];
  return {
    text: limit.source,
    links: [{ kind: 'rule', id: limit.ruleId, text: `rule ${limit.ruleId}` }, ...sheet],
  };
}

/** A part of the sheet as it stands on a rung: by a change of it, else as the combination has it. */
export function sourceOfPart(view: ReachInView, rung: Rung, part: ReachChange['part']): ShownSource {
  const change = rung.changes.find((one) => one.part === part);
  if (change !== undefined) return sourceOfChange(view, rung, change);
  const { combinationId, name } = view;
  const links: ReachLink[] =
    combinationId === null ? [] : [{ kind: 'combination', id: combinationId, text: name }];
  return { text: 'From the sheet; what it does not say stands among the assumptions.', links };
}
