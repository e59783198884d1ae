import { matchBands, solveMatch } from '@pullbook/core/airpath';
import { fitMatch, withFit } from '@pullbook/core/fit';
import { chanceFor } from '../coverage/chance.ts';
import { drawEngine, type KnownEngine } from './engine.ts';
import { asItIs, drawHidden, drawSetUp } from './hidden.ts';
import { drawGauges, meanOf, pullsOf } from './pulls.ts';

/** Whether a 95 % band held, how wide it was and how far its middle was off; shares of the figure. */
export interface Held {
  held: number[];
  width: number;
  off: number;
}

export const FORETOLD = ['boost', 'brakePower'] as const;
export type Foretold = (typeof FORETOLD)[number];

/** One engine: its next pulley foretold before any boosted pull and after three at the first, held against what it is and what was read. */
export interface EngineRun {
  engine: Pick<KnownEngine, 'airBasis' | 'isCooled' | 'isRated' | 'faster'>;
  /** Bands without a fit, of the next pulley. */
  unfitted: Record<Foretold, Held>;
  fitted: Record<Foretold, Held>;
  /** The same bands against the mean of three pulls at the next pulley. */
  againstRead: Record<Foretold, Held>;
}

const DRAWS = 300;

export function runEngine(seed: number, number: number): EngineRun {
  const chance = chanceFor(seed, `engine ${number}`);
  const engine = drawEngine(chance);
  const hidden = drawHidden(chance, engine.first.spread);
  const gauges = drawGauges(chance);
  const logged = {
    hasCharge: chance.uniform() < 0.7,
    hasAir: engine.airBasis !== 'torque and efficiency' && chance.uniform() < 0.7,
  };
  const truth = {
    first: solveMatch(asItIs(engine.first.input, hidden, drawSetUp(chance), 1)),
    next: solveMatch(asItIs(engine.next.input, hidden, drawSetUp(chance), engine.faster)),
  };
  const read = { gauges, hidden, logged, chance };
  const fit = fitMatch(pullsOf(truth.first, engine, read).map((pull) => ({ ...engine.first, pull })));
  if (!fit.ok) throw new Error(`engine ${number}: ${fit.remarks[0]!.message}`);
  const after = pullsOf(truth.next, engine, read);

  const bandsOf = (one: { input: typeof engine.next.input; spread: typeof engine.next.spread }) =>
    matchBands([one], { draws: DRAWS, seed: number }).cases[0]!;
  const [unfitted, fitted] = [bandsOf(engine.next), bandsOf(withFit(engine.next, fit.value))];
  const each = (of: (figure: Foretold) => Held): Record<Foretold, Held> => ({
    boost: of('boost'),
    brakePower: of('brakePower'),
  });
  const was = (figure: Foretold) => Array.from(truth.next.figures[figure]);
  return {
    engine,
    unfitted: each((figure) => heldBy(unfitted[figure], was(figure))),
    fitted: each((figure) => heldBy(fitted[figure], was(figure))),
    againstRead: each((figure) => heldBy(fitted[figure], meanOf(after, figure))),
  };
}

function heldBy({ low, high }: { low: number[]; high: number[] }, was: readonly number[]): Held {
  const known = was.flatMap((value, node) =>
    Number.isFinite(value) && Number.isFinite(low[node]!) ? [node] : [],
  );
  const mean = (of: (node: number) => number) =>
    known.reduce((sum, node) => sum + of(node), 0) / Math.max(1, known.length);
  return {
    held: known.map((node) => (was[node]! >= low[node]! && was[node]! <= high[node]! ? 1 : 0)),
    width: mean((node) => (high[node]! - low[node]!) / Math.abs(was[node]!)),
    off: mean((node) => (low[node]! + high[node]!) / 2 / was[node]! - 1),
  };
}
