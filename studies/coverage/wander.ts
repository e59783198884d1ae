import type { Chance } from './chance.ts';

interface Along {
  nodes: number;
  spacingRpm: number;
  /** Neighbours so far apart are alike by 1/e. */
  lengthRpm: number;
  /** Share of the standard deviation that is alone at each speed. */
  rowShare: number;
}

/** Noise along the engine speed of one pull after another. */
export interface Wanderer {
  /** Scaled so that the deviation of a speed from the pull's own average has standard deviation 1 over all speeds. */
  next(): Float64Array;
  /** Standard deviation of the average of one pull's noise, on that scale. */
  averageDeviation: number;
}

/**
 * Two kinds, so that no one form is assumed: `remembering`, each speed keeps part of the one before it, plus noise of the
 * rows; `waves`, four sine waves of random length (400 to 2,500 r/min), size and phase, plus noise of the rows.
 */
export function wanderer(
  along: Along,
  kind: 'remembering' | 'waves',
  chance: Chance,
  deviate: () => number,
): Wanderer {
  const raw = kind === 'remembering' ? remembering(along, deviate) : waves(along, chance, deviate);
  const { average, deviation } = kind === 'remembering' ? momentsOf(along) : momentsOfWaves(along);
  const scale = 1 / Math.sqrt(deviation);
  return { next: () => raw().map((value) => value * scale), averageDeviation: Math.sqrt(average) * scale };
}

function remembering(
  { nodes, spacingRpm, lengthRpm, rowShare }: Along,
  deviate: () => number,
): () => Float64Array {
  const memory = Math.exp(-spacingRpm / lengthRpm);
  const fresh = Math.sqrt(1 - memory ** 2);
  const smooth = Math.sqrt(1 - rowShare ** 2);
  return () => {
    let value = deviate();
    return Float64Array.from({ length: nodes }, (_, node) => {
      if (node > 0) value = memory * value + fresh * deviate();
      return smooth * value + rowShare * deviate();
    });
  };
}

const WAVES = 4;

function waves({ nodes, spacingRpm, rowShare }: Along, chance: Chance, deviate: () => number) {
  const smooth = Math.sqrt(1 - rowShare ** 2);
  return (): Float64Array => {
    const parts = Array.from({ length: WAVES }, () => ({
      size: deviate() * Math.sqrt(2 / WAVES),
      perNode: (2 * Math.PI * spacingRpm) / wavelength(chance.uniform()),
      phase: 2 * Math.PI * chance.uniform(),
    }));
    return Float64Array.from({ length: nodes }, (_, node) => {
      const sum = parts.reduce((all, one) => all + one.size * Math.sin(one.perNode * node + one.phase), 0);
      return smooth * sum + rowShare * deviate();
    });
  };
}

const wavelength = (share: number) => 400 * (2500 / 400) ** share;

/** Variance of a pull's average, and mean variance of a speed about it, where one speed alone has variance 1. */
function momentsOf({ nodes, spacingRpm, lengthRpm, rowShare }: Along) {
  const kin = (apart: number) =>
    (1 - rowShare ** 2) * Math.exp((-apart * spacingRpm) / lengthRpm) + (apart === 0 ? rowShare ** 2 : 0);
  return fromKin(nodes, kin);
}

/** The same of the waves: the mean over lengths of what two speeds of one wave share. */
function momentsOfWaves({ nodes, spacingRpm, rowShare }: Along) {
  const lengths = Array.from({ length: 400 }, (_, index) => wavelength((index + 0.5) / 400));
  const kin = (apart: number) => {
    const shared = lengths.reduce((sum, one) => sum + Math.cos((2 * Math.PI * apart * spacingRpm) / one), 0);
    return ((1 - rowShare ** 2) * shared) / lengths.length + (apart === 0 ? rowShare ** 2 : 0);
  };
  return fromKin(nodes, kin);
}

function fromKin(nodes: number, kin: (apart: number) => number): { average: number; deviation: number } {
  let sum = 0;
  for (let apart = 0; apart < nodes; apart += 1)
    sum += (apart === 0 ? nodes : 2 * (nodes - apart)) * kin(apart);
  const average = sum / nodes ** 2;
  return { average, deviation: 1 - average };
}
