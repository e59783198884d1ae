import { fullName, type TrialInView } from '../trial-in-view.ts';
import { listed } from '../wording.ts';
import { claimInTwo, claimLine } from './claim-words.ts';
import { aloneFacts, aloneHeadline, channelHeadline, verdictsLine } from './curve-stills.ts';
import { type Scale, stackAt } from './one-scale.ts';
import type { MadeStep } from './own-step.ts';
import { channelPanel, gainOf, onlyOf } from './panels.ts';
import { stackPicture } from './picture.ts';
import { temperaturePanels } from './temperatures-still.ts';

/** The baseline, or what was pulled first where nothing is compared. */
export function baselineStep(view: TrialInView, scale: Scale | null): MadeStep {
  const own = onlyOf(view, view.baseline);
  const chart = stackAt(own, scale, [channelPanel(own, 'power', { pulls: 'counted' })]);
  const whyNot = `${fullName(view.baseline)} has no counted pull with a curve.`;
  if (chart === null) return { picture: null, whyNot };
  const words = { headline: aloneHeadline(own, view.baseline), subline: aloneFacts(own, view.baseline) };
  return { picture: stackPicture(own, chart, words), whyNot, of: own };
}

/** What was changed draws itself beside the baseline, which stands. */
export function changedStep(view: TrialInView, scale: Scale | null): MadeStep {
  const others = view.combinations.filter((item) => item !== view.baseline && item.figures !== null);
  const panel = channelPanel(view, 'power', { pulls: 'counted' });
  const keys = new Set(
    others.flatMap(({ key, counted: pulls }) => [key, ...pulls.map(({ pull }) => pull.id)]),
  );
  const drawn = panel?.lines.map(({ id }) => id).filter((id) => keys.has(id)) ?? [];
  const chart = drawn.length === 0 ? null : stackAt(view, scale, [panel]);
  const whyNot = 'No other combination has a counted pull with a curve.';
  if (chart === null) return { picture: null, whyNot };
  const [only, more] = others;
  const isOne = only !== undefined && more === undefined;
  const words = {
    headline: isOne ? aloneHeadline(view, only) : channelHeadline(view, 'power'),
    subline: isOne ? aloneFacts(view, only) : claimLine(view),
  };
  return { picture: stackPicture(view, chart, words), whyNot, drawn };
}

export function gainStep(view: TrialInView, scale: Scale | null): MadeStep {
  const panel = gainOf(view, 1);
  const chart =
    panel === null ? null : stackAt(view, scale, [channelPanel(view, 'power', { share: 0.8 }), panel]);
  const whyNot =
    view.state === 'survey'
      ? 'A survey claims no gain: its engines differ in more than one part.'
      : 'There is no gain to show: it takes a counted pull of the baseline and of another combination, with engine speeds in common.';
  if (panel === null || chart === null) return { picture: null, whyNot };
  const words = { headline: claimInTwo(view).headline, subline: verdictsLine(view) };
  return { picture: stackPicture(view, chart, words), whyNot, drawn: panel.lines.map(({ id }) => id) };
}

export function boostStep(view: TrialInView, scale: Scale | null): MadeStep {
  const pressure = channelPanel(view, 'boost');
  const chart = stackAt(view, scale, [pressure, ...temperaturePanels(view)]);
  const whyNot = 'No counted pull has boost, charge temperature or mixture.';
  if (chart === null) return { picture: null, whyNot };
  const titles = chart.panels.map(({ title }) => title.toLowerCase());
  const words = {
    headline: pressure === null ? `What was read beside: ${listed(titles)}` : channelHeadline(view, 'boost'),
    subline: claimInTwo(view).headline,
  };
  return { picture: stackPicture(view, chart, words), whyNot };
}
