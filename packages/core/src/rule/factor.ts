import { airState, CORRECTIONS, type CorrectionId } from '../air/index.ts';
import { extentOf } from '../numeric/index.ts';
import { acceptedRows, carriedFactor, channelOf } from '../pull/index.ts';
import { numberFigure, percentFigure } from '../quantity/index.ts';
import { joined, type Remark, said, saidIn } from '../remark/index.ts';
import type { Finding } from './model.ts';
import type { PullAtHand } from './pull-at-hand.ts';
import { findingOf } from './wrapped-remarks.ts';

/** V04: a factor column that wanders, and a carried factor that is not the weather's, with the standard that fits best. */
export function factor(at: PullAtHand): Finding[] {
  const disagrees = at.view.remarks.filter(({ code }) => code === 'factor-is-not-the-weathers');
  return [...wanders(at), ...disagrees.map((one) => withBestStandard(one, at))];
}

function wanders(at: PullAtHand): Finding[] {
  const channel = channelOf(at.pull, 'correctionFactor');
  if (channel === null || at.view.window === null) return [];
  const [low, high] = extentOf(acceptedRows(at.view.window).map((row) => channel.values[row]!));
  const value = (high - low) / (high + low);
  const allowed = at.limit('V04.constant');
  if (!(value > allowed) || !(low > 0)) return [];
  return [
    at.find('V04', {
      input: `Correction factor, "${channel.name}"`,
      kind: 'ratio',
      value,
      threshold: allowed,
      said: said`The factor goes from ${numberFigure(low, 4)} to ${numberFigure(high, 4)} in one pull; ${percentFigure(allowed, 1)} either way is let pass. Weather does not move so fast: a sensor warmed by the engine, or a column that is no factor.`,
    }),
  ];
}

function withBestStandard(one: Remark, at: PullAtHand): Finding {
  const carried = carriedFactor(at.pull.carried);
  const air = at.pull.weather === null ? null : airState(at.pull.weather);
  if (carried === null || air === null || !air.ok) return findingOf(one, at);
  const [best] = (Object.keys(CORRECTIONS) as CorrectionId[])
    .filter((id) => id !== 'observed')
    .map((id) => ({ name: CORRECTIONS[id].name, factor: CORRECTIONS[id].factor(air.value) }))
    .toSorted((a, b) => Math.abs(a.factor - carried) - Math.abs(b.factor - carried));
  const words = said`Of the standards known here ${best!.name} comes nearest: ${numberFigure(best!.factor, 4)}.`;
  const both = joined([saidIn(one), words], ' ');
  return findingOf({ ...one, message: both.text, parts: both.parts }, at);
}
