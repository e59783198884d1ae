import type { ComparedCombination, Comparison } from '../compare/index.ts';
import { median } from '../numeric/index.ts';
import type { Pull } from '../pull/index.ts';
import { numberFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import { ambientOf } from './pull-at-hand.ts';
import type { Speaker } from './speaker.ts';

/** Pa above which there is boost. */
export const LEAST_BOOST_PA = 5e3;

/**
 * V16: where a baseline without boost is held against a combination with it, power with over power without, over the pressure
 * ratio, in the middle of the speeds with boost.
 */
export function boostIndex(
  { gains, combinations }: Comparison,
  pulls: ReadonlyMap<string, Pull>,
  { limit, find }: Speaker,
): Finding[] {
  return gains.flatMap(({ baselineKey, changedKey }) => {
    const [without, boosted] = [baselineKey, changedKey].map((key) =>
      combinations.find((one) => one.key === key),
    );
    if (without === undefined || boosted === undefined || hasBoost(without)) return [];
    const [power, base] = [boosted, without].map((one) => one.channels.get('power')?.mean);
    const boost = boosted.channels.get('boost')?.mean;
    const ambient = median(
      boosted.pullIds.map((id) => (pulls.has(id) ? ambientOf(pulls.get(id)!) : null) ?? Number.NaN),
    );
    if (power === undefined || base === undefined || boost === undefined) return [];
    const value = median(
      power.map((watts, node) =>
        boost[node]! > LEAST_BOOST_PA ? watts / base[node]! / (1 + boost[node]! / ambient) : Number.NaN,
      ),
    );
    const [low, high] = [limit('V16.low'), limit('V16.high')];
    if (!Number.isFinite(value) || (value >= low && value <= high)) return [];
    return [
      find('V16', {
        input: `Power and boost of ${changedKey} against ${baselineKey}`,
        kind: 'ratio',
        value,
        threshold: value < low ? low : high,
        said: said`${changedKey} makes ${numberFigure(value, 2)} of what its pressure ratio would give on ${baselineKey}; ${numberFigure(low, 2)} to ${numberFigure(high, 2)} is plausible. ${
          value < low
            ? 'Slip, spark taken back, a rich mixture, heat or a choked exhaust.'
            : 'Other standards, another baseline, or a boost tap behind a restriction that reads low.'
        }`,
      }),
    ];
  });
}

const hasBoost = ({ channels }: ComparedCombination): boolean =>
  (channels.get('boost')?.mean ?? []).some((value) => value > LEAST_BOOST_PA);
