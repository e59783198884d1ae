import type { SpeedLine } from '../model.ts';

/** A speed line as the numbers of its equations, for a solver of others; docs/match-equations.md writes the equations. Flows kg/s, corrected. */
export type LineTerms =
  | {
      form: 'points';
      /** Of the highest pressure ratio by the equations; `peakFlow` of a line is never left of surge. */
      topFlow: number;
      /** Isentropic rise there over inlet temperature. */
      topRise: number;
      flowExponent: number;
      headExponent: number;
      /** 1 / (kg/s)², of the fall left of the top. */
      droop: number;
      /** Rise of temperature over inlet temperature: constant, for each kg/s, for its square. */
      work: number;
      workSlope: number;
      workCurve: number;
      /** Highest efficiency of the map's points, which none exceeds. */
      mostEfficiency: number;
    }
  | {
      form: 'rated';
      /** Of the best efficiency, and that efficiency, polytropic. */
      bestFlow: number;
      bestEfficiency: number;
      leftExponent: number;
      rightExponent: number;
      /** Share of the efficiency that is lost towards choke. */
      falling: number;
      work: number;
      workSlope: number;
      /** Below which the rise does not go. */
      leastWork: number;
    };

/**
 * The numbers of a line's equations.
 *
 * @example lineTerms(speedLineAt(map, 48_000)) // { form: 'points', topFlow: 0.204, topRise: 0.132, … }
 */
export function lineTerms({ shape }: SpeedLine): LineTerms {
  const at = (place: number): number => shape[place]!;
  return at(0) === 0
    ? {
        form: 'points',
        topFlow: at(1),
        topRise: at(2),
        flowExponent: at(4),
        headExponent: 1 / at(5),
        droop: at(6),
        work: at(7),
        workSlope: at(8),
        workCurve: at(9),
        mostEfficiency: at(10),
      }
    : {
        form: 'rated',
        bestFlow: at(1),
        bestEfficiency: at(3),
        leftExponent: at(4),
        rightExponent: at(6),
        falling: at(8),
        work: at(9),
        workSlope: at(10),
        leastWork: at(11),
      };
}
