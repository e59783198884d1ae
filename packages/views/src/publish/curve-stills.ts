import type { ChartPanel } from '@pullbook/charts';
import { meaningDisplay } from '../channel-display.ts';
import { saidGains } from '../said-gain.ts';
import { type CombinationInTrial, fullName, type TrialInView } from '../trial-in-view.ts';
import { repeatsWords, verdictFigures, verdictWords } from '../verdict-line.ts';
import { capitalised, counted, inSentence, listed } from '../wording.ts';
import { claimInTwo, claimLine } from './claim-words.ts';
import type { PictureName } from './model.ts';
import { type Scale, stackAt } from './one-scale.ts';
import { channelPanel, gainOf, lastOf, onlyOf } from './panels.ts';
import { type NamedPicture, stackPicture } from './picture.ts';

/** More figures than these make no headline. */
export const MOST_IN_HEADLINE = 4;

/** Each combination alone at the scale of all, the baseline first: power and torque, boost where it has any. */
export function aloneStills(view: TrialInView, scale: Scale | null): NamedPicture[] {
  return view.combinations.flatMap((item): NamedPicture[] => {
    const own = onlyOf(view, item);
    const chart = stackAt(own, scale, [
      channelPanel(own, 'power', { share: 1.6, pulls: 'counted' }),
      channelPanel(own, 'torque', { share: 1, pulls: 'counted', labels: 'keys' }),
      channelPanel(own, 'boost', { share: 0.8, labels: 'keys' }),
    ]);
    if (chart === null) return [];
    const words = { headline: aloneHeadline(own, item), subline: aloneFacts(own, item) };
    return [
      {
        name: 'alone',
        key: item.key,
        title: `${fullName(item)}, alone`,
        ...stackPicture(own, chart, words),
      },
    ];
  });
}

export function aloneHeadline({ show }: TrialInView, item: CombinationInTrial): string {
  const peak = item.figures?.peakPower;
  return peak ? `${fullName(item)}: ${show.peak(peak, 'power')}` : fullName(item);
}

/** `Average 412 hp from 4,000 to 6,500 rpm · 3 pulls, repeats scatter A 0.4 %` */
export function aloneFacts({ comparison, show }: TrialInView, { figures }: CombinationInTrial): string {
  if (figures === null) return '';
  const average = figures.averages.get('power');
  const window = comparison?.averagesWindowRpm;
  return [
    window && average !== undefined && Number.isFinite(average)
      ? `Average ${show.power(average)} from ${show.speedRange(window)}`
      : '',
    `${counted(figures.pullIds.length, 'pull')}, ${repeatsWords(show, [figures])}`,
  ]
    .filter(Boolean)
    .join(' · ');
}

/** Power, torque, boost, each large on a picture of its own, every counted pull thin behind its mean. */
export function channelStills(view: TrialInView, scale: Scale | null): NamedPicture[] {
  return (['power', 'torque', 'boost'] as const).flatMap((meaning) =>
    pictureOf(view, scale, meaning, [channelPanel(view, meaning, { pulls: 'counted', marks: false })], {
      headline: channelHeadline(view, meaning),
      subline: claimLine(view),
    }),
  );
}

/** `Highest power: A 496 hp and B 538 hp`; the channel's name where there are too many. */
export function channelHeadline(view: TrialInView, meaning: 'power' | 'torque' | 'boost'): string {
  const { show } = view;
  const figures = view.combinations.flatMap(({ key, figures: compared }) => {
    if (compared === null) return [];
    if (meaning === 'boost') {
      const last = lastOf(compared, 'boost');
      return last === undefined ? [] : [`${key} ${meaningDisplay('boost', show).text(last)}`];
    }
    const peak = meaning === 'power' ? compared.peakPower : compared.peakTorque;
    return peak ? [`${key} ${show.quantity(peak.value, meaning, { decimals: 0 })}`] : [];
  });
  const name = capitalised(meaning);
  if (figures.length === 0) return `${name} over engine speed`;
  if (figures.length > MOST_IN_HEADLINE) return `${name} of ${figures.length} combinations`;
  return meaning === 'boost'
    ? `Boost at the end of the pulls: ${listed(figures)}`
    : `Highest ${meaning}: ${listed(figures)}`;
}

/** The gain alone with its band large; where there is one, its verdict beside what it claims. */
export function gainStill(view: TrialInView, scale: Scale | null): NamedPicture[] {
  if (view.gains.length === 0) return [];
  return pictureOf(view, scale, 'gain', [gainOf(view, 1)], {
    headline: claimInTwo(view).headline,
    subline: verdictsLine(view),
  });
}

/** `Clear · +3.9 % (+0.7 to +7.2 %, at 95 %) · same day`; of several the verdict of each. */
export function verdictsLine(view: TrialInView): string {
  const said = saidGains(view);
  const [only] = said;
  if (said.length === 1 && only) {
    const { verdict } = only.gain;
    return verdict === null
      ? 'How sure it is, is not known: there is no scatter to judge it by.'
      : `${verdictWords(view.show, verdict)} · ${verdictFigures(only)}`;
  }
  const words = said.flatMap(({ changed, gain: { verdict } }) =>
    verdict === null ? [] : [`${changed.key} ${inSentence(verdictWords(view.show, verdict))}`],
  );
  return capitalised(words.join(', '));
}

const TITLES: Partial<Record<PictureName, string>> = {
  power: 'Power',
  torque: 'Torque',
  boost: 'Boost',
  gain: 'Gain',
  temperatures: 'Temperatures and mixture',
};

export function pictureOf(
  view: TrialInView,
  scale: Scale | null,
  name: PictureName,
  panels: (ChartPanel | null)[],
  words: { headline: string; subline: string },
): NamedPicture[] {
  const chart = stackAt(view, scale, panels);
  if (chart === null) return [];
  return [{ name, key: null, title: TITLES[name] ?? '', ...stackPicture(view, chart, words) }];
}
