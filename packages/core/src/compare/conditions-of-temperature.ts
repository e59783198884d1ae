import { median } from '../numeric/median.ts';
import { acceptedRows, type ChannelMeaning, channelOf } from '../pull/index.ts';
import { figureOf } from '../quantity/index.ts';
import { type CountedPull, numberCondition, rangeText } from './condition.ts';
import type { ConditionDifference } from './model.ts';

/** Rows at the start that tell a starting temperature. */
const STARTING_ROWS = 10;

const STARTS: readonly {
  id: string;
  meaning: ChannelMeaning;
  label: string;
  limitK: number;
  asked: 'always' | 'boosted' | 'where noted';
  why: string;
}[] = [
  start('oil-start', 'oilTemperature', 'Oil at the start', 10, 'Thinner oil drags less'),
  start(
    'coolant-start',
    'coolantTemperature',
    'Coolant at the start',
    5,
    'A warmer engine breathes and knocks differently',
  ),
  start(
    'charge-start',
    'chargeTemperature',
    'Charge at the start',
    10,
    'A soaked cooler costs air and spark',
    'boosted',
  ),
  start(
    'inlet-start',
    'inletAirTemperature',
    'Inlet air at the start',
    10,
    'The factor follows the air, the charge only in part',
  ),
  start(
    'fuel-start',
    'fuelTemperature',
    'Fuel at the start',
    10,
    'Warm fuel is thinner and boils in the bowl; a flow meter by volume reads it high',
    'where noted',
  ),
];

function start(
  id: string,
  meaning: ChannelMeaning,
  label: string,
  limitF: number,
  effect: string,
  asked: 'always' | 'boosted' | 'where noted' = 'always',
) {
  const limitK = limitF / 1.8;
  const why = `${effect}; ${limitF} °F (${limitK.toFixed(1)} K) apart is let pass (common practice, no source).`;
  return { id, meaning, label, limitK, asked, why };
}

/** Temperatures over the first accepted rows, each with the limit the trade lets pass between compared pulls. */
export function conditionsOfTemperature(
  pulls: readonly CountedPull[],
  boosted: boolean,
): ConditionDifference[] {
  const isAsked = ({ asked, meaning }: (typeof STARTS)[number]) =>
    asked === 'always' ||
    (asked === 'boosted' ? boosted : pulls.some((counted) => startTemperature(counted, meaning) !== null));
  return STARTS.filter(isAsked).map(({ id, label, why, meaning, limitK }) =>
    numberCondition(pulls, {
      id,
      label,
      why,
      read: (counted) => startTemperature(counted, meaning),
      text: rangeText((kelvin) => figureOf(kelvin, 'temperature', { decimals: 0 })),
      differ: (low, high) => high - low > limitK,
    }),
  );
}

/** Median of a temperature over the first accepted rows, K; `null`: not measured there. */
export function startTemperature(
  { pull, view }: Pick<CountedPull, 'pull' | 'view'>,
  meaning: ChannelMeaning,
): number | null {
  const channel = channelOf(pull, meaning);
  if (channel === null || view.window === null) return null;
  const rows = acceptedRows(view.window);
  const first = view.curve?.kindOfRows === 'points' ? rows.slice(0, 1) : rows.slice(0, STARTING_ROWS);
  const value = median(first.map((row) => channel.values[row]!));
  return Number.isFinite(value) ? value : null;
}
