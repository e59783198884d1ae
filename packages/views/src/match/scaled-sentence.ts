import type { SentencePart } from '../model.ts';
import type { MatchInView } from './match-in-view.ts';
import { rangeNumbers } from './match-words.ts';

/**
 * What stands in for pulls without supercharger that were never made: its highest power, and that nobody measured it. Nothing
 * where there is no such combination.
 *
 * @example A, longer cam without supercharger, should make 353 hp (336 to 370) at 6,350 rpm: scaled, never measured.
 */
export function scaledSentence({ bundle, show }: MatchInView): SentencePart[] {
  const found = bundle.left.find(({ scaled }) => scaled !== undefined);
  if (found?.scaled === undefined) return [];
  const { baseline, power } = found.scaled;
  const top = baseline.brakePower.indexOf(Math.max(...baseline.brakePower));
  const band = rangeNumbers(show, 'brakePower', [power.low[top]!, power.high[top]!], { decimals: 0 });
  return [
    { text: `${found.key}, ${found.name}, should make ` },
    { text: show.power(baseline.brakePower[top]!), strong: true },
    { text: ` (${band}) at ${show.speed(baseline.engineSpeedRpm[top]!)}: scaled, never measured. ` },
  ];
}
