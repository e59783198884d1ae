import { figureOf } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { ChannelMeaning, Pull } from './model.ts';

/** Manifold pressure this far above the barometer is boost, and a pull with it is of a supercharged engine. Pa. */
const LEAST_BOOST_PA = 5e3;

/** Boost in the pull's channels: as logged, or the manifold's absolute pressure less the barometer where that is known. */
export function boostOfPull(
  pull: Pull,
  values: ReadonlyMap<ChannelMeaning, Float64Array>,
): { boost: Float64Array | null; remarks: Remark[] } {
  const logged = values.get('boost');
  if (logged !== undefined) return { boost: logged, remarks: [] };
  const manifold = values.get('manifoldPressure');
  const barometer = values.get('barometer');
  const ambient = (row: number) => barometer?.[row] ?? pull.weather?.pressure ?? Number.NaN;
  if (manifold === undefined || (barometer === undefined && pull.weather === null))
    return { boost: null, remarks: [] };
  const boost = manifold.map((pressure, row) => pressure - ambient(row));
  if (!reachesBoost(boost)) return { boost: null, remarks: [] };
  const from =
    barometer === undefined
      ? said`the pull's barometer, ${figureOf(ambient(0), 'absolutePressure')}`
      : 'the barometer channel';
  return {
    boost,
    remarks: [
      remark(
        'note',
        'boost-from-manifold-pressure',
        said`Boost is the manifold's absolute pressure less ${from}.`,
      ),
    ],
  };
}

/** Whether a boost channel ever shows real boost. */
export const reachesBoost = (boost: Float64Array | null): boolean =>
  boost !== null && boost.filter((value) => value > LEAST_BOOST_PA).length > 2;
