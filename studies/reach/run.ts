import { type MatchInput, matchInputOf, solveMatch } from '@pullbook/core/airpath';
import { fitMatch, type MatchFit } from '@pullbook/core/fit';
import { type Rung, reach } from '@pullbook/core/reach';
import { type Chance, chanceFor } from '../coverage/chance.ts';
import { drawEngine, type KnownEngine } from '../next-pulley/engine.ts';
import { asItIs, drawHidden, drawSetUp, type Hidden } from '../next-pulley/hidden.ts';
import { drawGauges, meanOf, pullsOf } from '../next-pulley/pulls.ts';
import { askedOf, type Stated, WAYS, type WayAsked } from './world.ts';

/** A rung that was shown, held against what the engine then truly makes. */
export interface Held {
  way: WayAsked;
  isFitted: boolean;
  /** It is the first that is said to reach: the one that somebody would go by. */
  isFirst: boolean;
  /** What was foretold over what it makes, less 1. */
  off: number;
  /** Width of the band, share. */
  width: number;
  held: boolean;
  chance: number;
  /** What it makes is what was asked for, or more. */
  reached: boolean;
}

/** How much more is asked for than there is. */
const MORE = [1.015, 1.08] as const;

/** One invented engine: three pulls of it are fitted, more is asked for by each way, with the fit and without; what is shown is held against what it then makes. */
export function runWorld(seed: number, number: number): Held[] {
  const chance = chanceFor(seed, `reach ${number}`);
  const engine = drawEngine(chance);
  const hidden = drawHidden(chance, engine.first.spread);
  const gauges = drawGauges(chance);
  const logged = { hasCharge: chance.uniform() < 0.7, hasAir: false };
  const now = solveMatch(asItIs(engine.first.input, hidden, drawSetUp(chance), 1));
  const pulls = pullsOf(now, engine, { gauges, hidden, logged, chance });
  const fit = fitMatch(pulls.map((pull) => ({ ...engine.first, pull })));
  if (!fit.ok) throw new Error(`engine ${number}: ${fit.remarks[0]!.message}`);
  const measured = Math.max(...meanOf(pulls, 'brakePower'));
  const matched = Math.max(...solveMatch(engine.first.input).figures.brakePower);
  return WAYS.flatMap((way) =>
    [true, false].flatMap((isFitted) => {
      const power = (isFitted ? measured : matched) * (MORE[0] + (MORE[1] - MORE[0]) * chance.uniform());
      const stated = { gain: 0.02 + 0.05 * chance.uniform(), spread: 0.015 };
      const made = { engine, hidden, chance, way, stated };
      return heldOf(made, { fit: isFitted ? fit.value : null, power, seed: number });
    }),
  );
}

interface Made {
  engine: KnownEngine;
  hidden: Hidden;
  chance: Chance;
  way: WayAsked;
  stated: Stated;
}

function heldOf(made: Made, asked: { fit: MatchFit | null; power: number; seed: number }): Held[] {
  const { way, stated, engine, chance } = made;
  const { rungs } = reach(askedOf(engine, { way, stated, ...asked }));
  const first = rungs.find(({ reaches }) => reaches);
  const gained = 1 + stated.spread * chance.normal();
  const otherCooler = chance.normal();
  return rungs.map((rung) => {
    const truly = trulyMade(made, rung, { gained, otherCooler });
    const { value, low, high } = rung.reached;
    return {
      way,
      isFitted: asked.fit !== null,
      isFirst: rung === first,
      off: value / truly - 1,
      width: (high - low) / value,
      held: low <= truly && truly <= high,
      chance: rung.chance,
      reached: truly >= asked.power,
    };
  });
}

/** W, highest: the rung's sheet matched anew without any fit, with the faults that nobody knows, of another day and set-up. */
function trulyMade(
  { engine, hidden, chance, stated }: Made,
  rung: Rung,
  { gained, otherCooler }: { gained: number; otherCooler: number },
): number {
  const ready = matchInputOf({ ...engine.madeOf, sheet: rung.made!.sheet });
  if (!ready.ok) throw new Error(ready.remarks[0]!.message);
  const { input, spread } = ready.value;
  const ratioOf = ({ drive }: MatchInput) => drive.pulleyRatio * drive.stepUp;
  const faster = ratioOf(input) / ratioOf(engine.first.input);
  const has = (part: 'cooler' | 'breathing') => rung.changes.some((change) => change.part === part);
  // Another cooler is off by as much as is stated of it, and not as the one before was.
  const ofCooler = spread.find(({ parts }) => parts.includes('cooler'));
  const deviation =
    ofCooler === undefined ? 0 : Math.hypot(...ofCooler.factor[ofCooler.parts.indexOf('cooler')]!);
  const truth = has('cooler')
    ? { ...hidden, parts: { ...hidden.parts, cooler: deviation * otherCooler } }
    : hidden;
  const is = asItIs(input, truth, drawSetUp(chance), faster);
  const breathing = has('breathing') ? (1 + stated.gain) * gained : 1;
  const { swallowing } = is;
  const curve = solveMatch({
    ...is,
    swallowing: { ...swallowing, breathing: swallowing.breathing!.map((one) => one * breathing) },
  });
  return Math.max(...curve.figures.brakePower.filter(Number.isFinite));
}
