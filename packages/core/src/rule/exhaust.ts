import { extentOf, mean, median } from '../numeric/index.ts';
import { acceptedRows } from '../pull/index.ts';
import { figureOf } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import type { PullAtHand } from './pull-at-hand.ts';

const KIND = 'temperatureDifference';

/** V32: exhaust probes against each other over the upper half of the accepted rows, where they have come up. */
export function exhaust(at: PullAtHand): Finding[] {
  const probes = at.pull.channels.filter(({ meaning }) => meaning === 'exhaustTemperature');
  if (probes.length < 2 || at.view.window === null) return [];
  const rows = acceptedRows(at.view.window);
  const upper = rows.slice(Math.floor(rows.length / 2));
  const known = probes
    .map(({ name, values }) => ({ name, value: median(upper.map((row) => values[row]!)) }))
    .filter(({ value }) => Number.isFinite(value));
  if (known.length < 2) return [];
  const values = known.map(({ value }) => value);
  const [low, high] = extentOf(values);
  const coldest = known.find(({ value }) => value === low)!;
  const hottest = known.find(({ value }) => value === high)!;
  const under = mean(values) - low;
  const figure = (kelvin: number) => figureOf(kelvin, KIND, { decimals: 0 });
  if (under > at.limit('V32.cold'))
    return [
      at.find('V32', {
        input: `Exhaust temperature, ${coldest.name}`,
        kind: KIND,
        value: under,
        threshold: at.limit('V32.cold'),
        said: said`"${coldest.name}" is ${figure(under)} below the mean of the probes; ${figure(at.limit('V32.cold'))} is let pass. A cylinder that does not fire, or a broken probe: look at its plug before the next pull.`,
      }),
    ];
  if (!(high - low > at.limit('V32.spread'))) return [];
  return [
    at.find('V32', {
      input: 'Exhaust temperatures',
      kind: KIND,
      value: high - low,
      threshold: at.limit('V32.spread'),
      said: said`The exhaust probes are ${figure(high - low)} apart, from "${coldest.name}" to "${hottest.name}"; ${figure(at.limit('V32.spread'))} is let pass. A cylinder runs lean or weak, or probes sit at unlike depths: read the plugs of both.`,
    }),
  ];
}
