import {
  type Baseline,
  caseAtNodes,
  keyOfBaseline,
  MATCH_FIGURES,
  type MatchCase,
  matchDraws,
  powerSpreadOf,
} from '../airpath/index.ts';
import { normalSource } from '../numeric/index.ts';

/** Drawn figures at some nodes: the value of draw `d` at node `n` stands at `n × draws + d`. Power in W as observed, boost in Pa. */
export interface RungDraws {
  engineSpeedRpm: number[];
  power: Float32Array;
  /** `null`: no supercharger */
  boost: Float32Array | null;
  draws: number;
}

interface Drawn {
  draws: number;
  seed: number;
}

const POWER = MATCH_FIGURES.indexOf('brakePower');
const BOOST = MATCH_FIGURES.indexOf('boost');

/** Of a supercharged rung. */
export function drawsOfMatch(match: MatchCase, nodes: readonly number[], { draws, seed }: Drawn): RungDraws {
  const thin = caseAtNodes(match, nodes);
  const [one] = matchDraws([thin], { draws, seed }).cases;
  const rows = nodes.length * draws;
  const { engineSpeedRpm, values } = one!;
  return {
    engineSpeedRpm,
    power: values.subarray(POWER * rows, (POWER + 1) * rows),
    boost: values.subarray(BOOST * rows, (BOOST + 1) * rows),
    draws,
  };
}

/** What is open of an engine without a supercharger beside its own curve: one standard deviation each, share of the indicated power. */
export interface AloneSpread {
  key: string;
  spread: number;
}

/**
 * Of a naturally aspirated rung: its baseline's power as far as it is known, and what breathes or burns otherwise. What has the key of a match's group shares its
 * draws.
 *
 * @param factors on the indicated power at each node
 */
export function drawsOfAlone(
  baseline: Baseline,
  {
    factors,
    spreads,
    nodes,
  }: { factors: readonly number[]; spreads: readonly AloneSpread[]; nodes: readonly number[] },
  { draws, seed }: Drawn,
): RungDraws {
  const power = new Float32Array(nodes.length * draws);
  const ofPower = powerSpreadOf(baseline);
  // In the group of the baseline its air is drawn first, its power second.
  const ofBaseline = normalSource(seed, keyOfBaseline(baseline));
  const sources = spreads.map(({ key, spread }) => ({ source: normalSource(seed, key), spread }));
  const pair = new Float64Array(2);
  const single = new Float64Array(1);
  for (let draw = 0; draw < draws; draw++) {
    ofBaseline(draw, pair);
    const measured = 1 + ofPower * pair[1]!;
    let work = 1;
    for (const { source, spread } of sources) {
      source(draw, single);
      work *= 1 + spread * single[0]!;
    }
    for (const [place, node] of nodes.entries()) {
      const friction = baseline.frictionPower[node]!;
      power[place * draws + draw] =
        (baseline.brakePower[node]! * measured + friction) * factors[node]! * work - friction;
    }
  }
  return { engineSpeedRpm: nodes.map((node) => baseline.engineSpeedRpm[node]!), power, boost: null, draws };
}
