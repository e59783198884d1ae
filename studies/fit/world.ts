import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type MatchBands, matchBands, solveMatch } from '@pullbook/core/airpath';
import type { Result } from '@pullbook/core/remark';
import { openBook } from '@pullbook/store';
import type { MatchedCombination } from '@pullbook/views/match';
import { makeDemoBook, matchOfTrial } from '@pullbook/workshop';

/** Speeds at which a world is judged, r/min: the window of the demo's trials. */
export const SPEEDS = [4000, 4250, 4500, 4750, 5000, 5250, 5500, 5750, 6000, 6250, 6500];

/** One figure over `SPEEDS`: matched less measured, and half the 95 % band, in one and the same unit. */
export interface Judged {
  off: number[];
  half: number[];
}

/** What became of one invented world. Shares of the measured for the next pulley; Pa and W for the cam. */
export interface World {
  seed: number;
  /** The second pulley, foretold from the pulls of the first alone. */
  nextPulley: { boost: Judged; power: Judged };
  /** The cam's difference, both fitted at once; and half the band of its second combination by itself. */
  cam: { boost: Judged; power: Judged; boostAlone: number[]; powerAlone: number[] };
}

const DRAWS = 400;

/**
 * A demo book with another truth behind it (its generator uses nothing of the match), and what the acts that people use say of it: the pulls of the
 * second pulley stay out of the fit.
 */
export async function judgedWorld(seed: number): Promise<World> {
  const folder = await mkdtemp(join(tmpdir(), 'pullbook-world-'));
  try {
    await makeDemoBook(join(folder, 'book'), seed);
    const book = await openBook(join(folder, 'book'));
    try {
      const trials = await book.trials();
      const asked = (start: string) => trials.find(({ question }) => question.startsWith(start))!;
      const pulley = asked('What does the smaller pulley');
      const [first] = pulley.combinations;
      const foretold = taken(await matchOfTrial(book, pulley.id, { fitOn: [first!.combinationId] }));
      const cam = taken(await matchOfTrial(book, asked('What does the longer cam add').id));
      return { seed, nextPulley: pulleyJudged(foretold.combinations), cam: camJudged(cam.combinations) };
    } finally {
      await book.close();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function pulleyJudged(combinations: readonly MatchedCombination[]): World['nextPulley'] {
  const next = combinations[1]!;
  if (next.fit !== null) throw new Error('The pulls to be foretold stand in the fit.');
  const bands = matchBands([next], { draws: DRAWS, seed: 1 }).cases[0]!;
  const figures = solveMatch(next.input).figures;
  const judged = (figure: 'boost' | 'brakePower'): Judged => {
    const places = SPEEDS.map((speed) => placeOf(next, speed));
    return {
      off: SPEEDS.map((speed, i) => figures[figure][places[i]!]! / measured(next, figure, speed) - 1),
      half: SPEEDS.map((speed, i) => halfOf(bands[figure], places[i]!) / measured(next, figure, speed)),
    };
  };
  return { boost: judged('boost'), power: judged('brakePower') };
}

function camJudged(combinations: readonly MatchedCombination[]): World['cam'] {
  const [base, longer] = combinations as [MatchedCombination, MatchedCombination];
  const bands = matchBands([base, longer], { draws: DRAWS, seed: 1 });
  const [ofBase, ofLonger] = [base, longer].map(({ input }) => solveMatch(input).figures);
  const judged = (figure: 'boost' | 'brakePower'): Judged => ({
    off: SPEEDS.map((speed) => {
      const matched = ofLonger![figure][placeOf(longer, speed)]! - ofBase![figure][placeOf(base, speed)]!;
      return matched - (measured(longer, figure, speed) - measured(base, figure, speed));
    }),
    half: SPEEDS.map((speed) => halfOf(bands.differences[1]![figure], placeOf(longer, speed))),
  });
  const alone = (figure: 'boost' | 'brakePower') =>
    SPEEDS.map((speed) => halfOf(bands.cases[1]![figure], placeOf(longer, speed)));
  return {
    boost: judged('boost'),
    power: judged('brakePower'),
    boostAlone: alone('boost'),
    powerAlone: alone('brakePower'),
  };
}

const placeOf = ({ input }: MatchedCombination, speed: number): number =>
  input.baseline.engineSpeedRpm.indexOf(speed);

function measured({ measured: means }: MatchedCombination, figure: 'boost' | 'brakePower', speed: number) {
  const values = figure === 'boost' ? means!.boost! : means!.power;
  return values[means!.engineSpeedRpm.indexOf(speed)]!;
}

const halfOf = ({ low, high }: MatchBands['cases'][number]['boost'], place: number): number =>
  (high[place]! - low[place]!) / 2;

function taken<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.remarks[0]?.message);
  return result.value;
}
