import { randomUUID } from 'node:crypto';
import { CORRECTIONS } from '@pullbook/core/air';
import { numberFigure } from '@pullbook/core/quantity';
import type { Enquiry, Rung } from '@pullbook/core/reach';
import { said } from '@pullbook/core/remark';
import type { PredictedCurve, Prediction } from '@pullbook/core/shop';
import { shortId } from '../find-one.ts';

/** What a rung foretells of the combination it becomes: highest power, highest boost, and both over engine speed. */
export function foretoldByRung(
  { id, question, answer, madeBy }: Enquiry,
  { rung, number }: { rung: Rung; number: number },
  about: { trialId: string; key: string; at: string },
): Prediction[] {
  const { id: standard, factor } = answer.standard;
  const carried =
    factor === 1
      ? ''
      : said` Peak power carried to ${CORRECTIONS[standard].name} by the factor ${numberFigure(factor, 4)}.`
          .text;
  const common = {
    ...about,
    basis: `Rung ${number} of enquiry ${shortId(id)} "${question}", ${rung.ground}.${carried}`,
    curve: curveOf(rung, answer),
    madeBy,
  };
  const { peakPower, highestBoost } = rung;
  const made = (
    what: Prediction['what'],
    { value, low, high }: { value: number; low: number; high: number },
  ) => ({
    ...common,
    id: randomUUID(),
    what,
    value,
    low,
    high,
  });
  return [
    made('peakPower', peakPower),
    ...(highestBoost === null ? [] : [made('highestBoost', highestBoost)]),
  ];
}

/** A rung's curve stands in the target's standard; what is foretold is held against what is observed. */
function curveOf({ curve }: Rung, { standard: { factor }, air }: Enquiry['answer']): PredictedCurve {
  const observed = (values: readonly number[]) => values.map((value) => value / factor);
  const { value, low, high } = curve.power;
  return {
    engineSpeedRpm: curve.engineSpeedRpm,
    power: { value: observed(value), low: observed(low), high: observed(high) },
    boost: curve.boost,
    air,
  };
}
