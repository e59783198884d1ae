import type { ChartPanel } from '@pullbook/charts';
import { isBig } from '../gain-sentence.ts';
import type { TrialInView } from '../trial-in-view.ts';
import { claimInTwo } from './claim-words.ts';
import { type Scale, stackAt } from './one-scale.ts';
import { channelPanel, gainOf, MOST_BANDS } from './panels.ts';
import { type NamedPicture, stackPicture } from './picture.ts';

/**
 * The answer as one picture: power and boost on a supercharged engine, with the gain where the change is not big; power,
 * torque and gain without one. None where there is no curve.
 */
export function answerStill(view: TrialInView, scale: Scale | null): NamedPicture[] {
  const chart = stackAt(view, scale, answerPanels(view));
  if (chart === null) return [];
  return [{ name: 'answer', key: null, title: 'The answer', ...stackPicture(view, chart, claimInTwo(view)) }];
}

function answerPanels(view: TrialInView): (ChartPanel | null)[] {
  const power = channelPanel(view, 'power', { share: 1.7 });
  // More gains than have room for their bands have a picture of their own, and a table.
  const gain = view.gains.length > MOST_BANDS ? null : gainOf(view, 0.8);
  if (view.combinations.some(({ figures, supercharged }) => figures && supercharged)) {
    const boost = channelPanel(view, 'boost', { share: 0.8, labels: 'keys' });
    // The gain of a big change is the power's own picture; a small one is only seen in a panel of its own.
    return view.gains.every(({ gain }) => isBig(gain)) ? [power, boost] : [power, gain, boost];
  }
  const torque = channelPanel(view, 'torque', { share: 0.9, labels: 'keys', endValue: () => null });
  return [power, torque, gain];
}
