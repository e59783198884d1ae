import { isSupercharged } from '../combination/index.ts';
import { extentOf, median } from '../numeric/index.ts';
import { channelOf } from '../pull/index.ts';
import { figureOf } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import type { PullAtHand } from './pull-at-hand.ts';

/** Slower than this the engine stands, as in the reading of a pull. */
const TURNING_RPM = 1;
/** Fewer rows do not tell a zero. */
const ROWS_OF_ZERO = 3;
const KIND = 'pressureDifference';

/** V11: manifold against barometer without a supercharger. V12: the zero of the boost sensor while the engine stands. */
export const manifold = (at: PullAtHand): Finding[] => [...againstBarometer(at), ...zeroOfBoost(at)];

function againstBarometer(at: PullAtHand): Finding[] {
  const pressure = at.values('manifoldPressure');
  // Only a sheet says that there is no supercharger: a pull above the barometer may be of one that is not described.
  if (pressure === null || at.ambient === null || at.sheet === null || isSupercharged(at.sheet)) return [];
  const [lowest] = extentOf(pressure);
  const above = median(pressure.filter(Number.isFinite)) - at.ambient;
  const below = at.ambient - lowest;
  const find = (value: number, threshold: number, words: ReturnType<typeof said>) =>
    at.find('V11', { input: 'Manifold pressure and barometer', kind: KIND, value, threshold, said: words });
  const figure = (value: number) => figureOf(value, KIND);
  if (above > at.limit('V11.above'))
    return [
      find(
        above,
        at.limit('V11.above'),
        said`The manifold stands ${figure(above)} above the barometer without a supercharger on the sheet; ${figure(at.limit('V11.above'))} is let pass. Check the sensor's zero and its unit, or the sheet.`,
      ),
    ];
  if (below > at.limit('V11.below'))
    return [
      find(
        below,
        at.limit('V11.below'),
        said`The manifold falls ${figure(below)} below the barometer at full load; ${figure(at.limit('V11.below'))} is let pass. A throttle not open, a small carburettor, an air hat or filter.`,
      ),
    ];
  return [];
}

function zeroOfBoost(at: PullAtHand): Finding[] {
  const speed = channelOf(at.pull, 'engineSpeed')?.values;
  const boost = channelOf(at.pull, 'boost')?.values;
  const absolute = channelOf(at.pull, 'manifoldPressure')?.values;
  const sensor = boost ?? absolute;
  if (speed === undefined || sensor === undefined || (boost === undefined && at.ambient === null)) return [];
  const standing = sensor.filter(
    (value, row) => Math.abs(speed[row]!) < TURNING_RPM && Number.isFinite(value),
  );
  if (standing.length < ROWS_OF_ZERO) return [];
  const value = median(standing) - (boost === undefined ? at.ambient! : 0);
  const threshold = at.limit('V12.zero');
  if (!(Math.abs(value) > threshold)) return [];
  return [
    at.find('V12', {
      input: boost === undefined ? 'Manifold pressure, engine standing' : 'Boost, engine standing',
      kind: KIND,
      value,
      threshold,
      said: said`With the engine standing the sensor is ${figureOf(value, KIND)} off ${boost === undefined ? 'the barometer' : 'nil'}; ${figureOf(threshold, KIND)} is let pass. Every boost figure of the pull is off by as much: zero the sensor.`,
    }),
  ];
}
