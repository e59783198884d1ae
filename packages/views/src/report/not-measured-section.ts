import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import type { ReportSection } from '../publish/model.ts';
import { countedPulls } from '../trial-in-view.ts';
import { inSentence, listed } from '../wording.ts';
import { paragraph } from './answer-section.ts';
import type { ReportInView } from './report-in-view.ts';

/** What a doubter asks for; any of a row answers it. */
const ASKED_FOR: readonly (readonly ChannelMeaning[])[] = [
  ['lambda', 'airFuelRatio'],
  ['fuelFlow', 'fuelVolumeFlow'],
  ['airFlow', 'airVolumeFlow'],
  ['fuelPressure'],
  ['sparkAdvance'],
  ['inletAirTemperature'],
  ['exhaustTemperature'],
  ['oilTemperature'],
  ['oilPressure'],
  ['coolantTemperature'],
];
const ASKED_OF_BOOSTED: readonly (readonly ChannelMeaning[])[] = [
  ['boost', 'manifoldPressure'],
  ['chargeTemperature'],
  ['impellerSpeed'],
];

/** What nobody measured or noted, so that nobody takes it for shown. */
export function notMeasuredSection({ view, page }: ReportInView): ReportSection {
  const pulls = countedPulls(view);
  const isBoosted = view.combinations.some(({ supercharged }) => supercharged);
  const asked = [...(isBoosted ? ASKED_OF_BOOSTED : []), ...ASKED_FOR];
  const has = (meaning: ChannelMeaning) =>
    pulls.some(({ pull }) => pull.channels.some((channel) => channel.meaning === meaning));
  const channels = asked.filter((row) => !row.some(has)).map(([first]) => inSentence(MEANINGS[first!].label));
  const unknown = page.likeForLike
    .filter(({ state, isPart }) => state === 'unknown' && !isPart)
    .map(({ label }) => inSentence(label));
  const forWhy = [...new Set(page.why.flatMap(({ notMeasured }) => notMeasured))];
  const items = [
    ...(channels.length === 0 || pulls.length === 0
      ? []
      : [`Not recorded with any counted pull: ${listed(channels)}.`]),
    ...(unknown.length === 0 ? [] : [`Not noted of every pull: ${listed(unknown)}.`]),
    ...(forWhy.length === 0 ? [] : [`What would tell why, and was not measured: ${listed(forWhy)}.`]),
    'How long the parts last, how it starts, idles and drives, and what it does on another engine: a pull on a brake does not show it.',
  ];
  return {
    id: 'notMeasured',
    title: 'What was not measured',
    blocks: [...(pulls.length === 0 ? [paragraph('No pull is counted yet.')] : []), { kind: 'list', items }],
  };
}
