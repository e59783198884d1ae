import { fQuantile, noncentralTCdf, studentTQuantile } from '@pullbook/core/numeric';
import { chanceFor } from './chance.ts';
import { SEED } from './run-case.ts';

const [GAIN, SIGMA, PRIOR] = [Math.log(1.01), 0.004, 20];
/** Degrees of freedom that repeats standing alone count for at least. */
const FEWEST_ALONE = 3;

/** How often a gain of 1 % is called clear at a scatter of 0.4 %, n + n pulls, by ways that are not the program's. */
export interface PowerByHand {
  /** Student's t of the pulls at hand alone, exact by the noncentral t; `null` where there are no repeats. */
  textbook: number | null;
  /** History of 20 degrees of freedom and repeats put together, simulated on averages. */
  moderated: number;
  /** The same, with history set aside where the repeats scatter more than F lets pass at 75 %. */
  withRule: number;
  /** Monte-Carlo standard error of the simulated ones, at most. */
  error: number;
}

/** Power by hand; the simulation uses averages only, no curves and nothing of the program's comparison. */
export function powerByHand(n: number, runs = 40_000): PowerByHand {
  const chance = chanceFor(SEED, `power by hand ${n}`);
  const repeats = 2 * n - 2;
  const limit = repeats === 0 ? Number.POSITIVE_INFINITY : fQuantile(0.75, repeats, PRIOR);
  const moderatedT = studentTQuantile(0.975, PRIOR + repeats);
  const ownT = repeats === 0 ? Number.NaN : studentTQuantile(0.975, Math.max(FEWEST_ALONE, repeats));
  let [moderated, withRule] = [0, 0];
  for (let run = 0; run < runs; run += 1) {
    const gain = GAIN + SIGMA * Math.sqrt(2 / n) * chance.normal();
    const own = repeats === 0 ? 0 : (SIGMA ** 2 * chance.chiSquare(repeats)) / repeats;
    const put = (PRIOR * SIGMA ** 2 + repeats * own) / (PRIOR + repeats);
    const clear = Math.abs(gain) > moderatedT * Math.sqrt((2 / n) * put);
    if (clear) moderated += 1;
    const aside = own / SIGMA ** 2 > limit;
    if (aside ? Math.abs(gain) > ownT * Math.sqrt((2 / n) * own) : clear) withRule += 1;
  }
  return {
    textbook: repeats === 0 ? null : textbook(n),
    moderated: moderated / runs,
    withRule: withRule / runs,
    error: 0.5 / Math.sqrt(runs),
  };
}

function textbook(n: number): number {
  const degreesOfFreedom = 2 * n - 2;
  const delta = GAIN / (SIGMA * Math.sqrt(2 / n));
  const t = studentTQuantile(0.975, degreesOfFreedom);
  return 1 - noncentralTCdf(t, degreesOfFreedom, delta) + noncentralTCdf(-t, degreesOfFreedom, delta);
}

/** Share of 2 + 2 pulls whose 95 % band holds the truth where they scatter twice as history says. */
export interface TwiceByHand {
  moderated: number;
  withRule: number;
}

/** What the rule that sets history aside is for, by hand, on averages only. */
export function twiceByHand(runs = 40_000): TwiceByHand {
  const chance = chanceFor(SEED, 'twice by hand');
  const limit = fQuantile(0.75, 2, PRIOR);
  const [own, put] = [studentTQuantile(0.975, FEWEST_ALONE), studentTQuantile(0.975, 22)];
  let [moderated, withRule] = [0, 0];
  for (let run = 0; run < runs; run += 1) {
    const error = Math.abs(2 * SIGMA * chance.normal());
    const seen = ((2 * SIGMA) ** 2 * chance.chiSquare(2)) / 2;
    const held = error <= put * Math.sqrt((PRIOR * SIGMA ** 2 + 2 * seen) / 22);
    if (held) moderated += 1;
    if (seen / SIGMA ** 2 > limit ? error <= own * Math.sqrt(seen) : held) withRule += 1;
  }
  return { moderated: moderated / runs, withRule: withRule / runs };
}
