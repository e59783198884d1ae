import { interpolateLinear } from '../numeric/index.ts';
import { channelOf, type Pull } from '../pull/index.ts';
import { FOOT, MECHANICAL_HORSEPOWER, POUND_FORCE, percentFigure, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import type { PullAtHand } from './pull-at-hand.ts';

/** Where hp and lb-ft are one number, r/min: 550 · 60 / 2π. */
export const CROSSING_RPM = (550 * 60) / (2 * Math.PI);

const isReadOffPicture = (pull: Pull): boolean =>
  [pull.origin, ...pull.channels.map(({ origin }) => origin)].includes('read off a picture');

/** V38: power in hp against torque in lb-ft at 5,252 r/min, in figures read off a picture. */
export function readOffPicture(at: PullAtHand): Finding[] {
  const [speed, torque, power] = (['engineSpeed', 'torque', 'power'] as const).map(
    (meaning) => channelOf(at.pull, meaning)?.values ?? null,
  );
  if (!speed || !torque || !power || !isReadOffPicture(at.pull)) return [];
  const rows = [...speed.keys()]
    .filter((row) => [speed, torque, power].every((values) => Number.isFinite(values[row]!)))
    .toSorted((one, other) => speed[one]! - speed[other]!);
  const [first, last] = [speed[rows[0] ?? -1], speed[rows.at(-1) ?? -1]];
  if (first === undefined || last === undefined || first > CROSSING_RPM || last < CROSSING_RPM) return [];
  const at5252 = (values: Float64Array) =>
    interpolateLinear(
      rows.map((row) => speed[row]!),
      rows.map((row) => values[row]!),
      CROSSING_RPM,
    );
  const horsepower = at5252(power) / MECHANICAL_HORSEPOWER;
  const poundFeet = at5252(torque) / (POUND_FORCE * FOOT);
  const value = horsepower / poundFeet - 1;
  const threshold = at.limit('V38.share');
  if (!(Math.abs(value) > threshold)) return [];
  return [
    at.find('V38', {
      input: `Power and torque at ${speedFigure(CROSSING_RPM).plain}`,
      kind: 'ratio',
      value,
      threshold: value < 0 ? -threshold : threshold,
      said: said`At ${speedFigure(CROSSING_RPM)} power in hp is ${percentFigure(Math.abs(value), 1)} ${value > 0 ? 'above' : 'below'} torque in lb-ft; there they are one number, ${percentFigure(threshold)} of reading error is let pass. Set the axes of the picture again.`,
    }),
  ];
}
