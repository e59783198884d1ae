import type { Chance } from './chance.ts';
import type { PlannedPull, Scene, ToldSpread, TrueGain } from './scene.ts';
import { wanderer } from './wander.ts';

export interface SimulatedPull extends PlannedPull {
  engineSpeedRpm: Float64Array;
  /** W */
  power: Float64Array;
}

export interface Simulated {
  pulls: SimulatedPull[];
  /** True gain as a share at each speed, and of the average power. */
  trueGain: { at: Float64Array; mean: number };
}

/** 2,500 to 6,500 r/min by 100. */
export const SPEEDS_RPM = Float64Array.from({ length: 41 }, (_, node) => 2500 + 100 * node);

/** W: torque that rises and falls like an engine's, times speed. */
const BASE_POWER = SPEEDS_RPM.map((speed) => {
  const torque = 620 - 190 * ((speed - 4300) / 2200) ** 2;
  return (torque * speed * 2 * Math.PI) / 60;
});

/** Share of the told scatter within a pull that no neighbour shares: noise of the rows left in a mean. */
const ROW_SHARE = 0.25;

/** Makes the pulls of one scene, and says what is true of them. */
export function simulate(scene: Scene, chance: Chance): Simulated {
  const { told, truth } = scene;
  const deviate = scene.tails === 'heavy' ? chance.heavyTailed : chance.normal;
  const factor = typeof truth === 'number' ? truth : 1;
  const sigma = (spread: ToldSpread, times = 1) =>
    truth === 'drawn' ? drawnSigma(spread, chance) : spread.sigma * times;
  const pull = sigma(told.pull, factor);
  const within = sigma(told.within, factor);
  const [setUp, day, cell] = [sigma(told.setUp), sigma(told.day), sigma(told.cell)];
  const wander = wanderer(
    { nodes: SPEEDS_RPM.length, spacingRpm: 100, lengthRpm: told.within.lengthRpm, rowShare: ROW_SHARE },
    scene.along ?? 'remembering',
    chance,
    deviate,
  );
  // The told scatter of pulls is that of a pull's average: what the wandering alone moves the average by is part of it.
  const offset = Math.sqrt(Math.max(0, pull ** 2 - (within * wander.averageDeviation) ** 2));
  const setUps = once(() => setUp * deviate());
  const days = once(() => day * deviate());
  const cells = once(() => cell * deviate());
  const slopes = once(() => slopeOf(scene, chance));
  const at = SPEEDS_RPM.map((speed) => gainAt(scene.gain, speed));
  const first = scene.pulls[0]!.group;
  const pulls = scene.pulls.map((planned): SimulatedPull => {
    const hours = planned.hours ?? 0;
    const level =
      setUps(planned.setUp) +
      days(planned.day) +
      cells(planned.cell) +
      offset * deviate() +
      slopes(planned.day) * hours -
      soaked(scene, hours);
    const own = wander.next();
    const power = BASE_POWER.map(
      (base, node) =>
        base * (planned.group === first ? 1 : 1 + at[node]!) * Math.exp(level + within * own[node]!),
    );
    return { ...planned, engineSpeedRpm: SPEEDS_RPM, power };
  });
  const changed = BASE_POWER.reduce((sum, base, node) => sum + base * (1 + at[node]!), 0);
  return { pulls, trueGain: { at, mean: changed / BASE_POWER.reduce((sum, base) => sum + base, 0) - 1 } };
}

/** A true spread from its prior. Beyond half of the power no pull would be one: such draws are made again. */
function drawnSigma({ sigma, degreesOfFreedom }: ToldSpread, chance: Chance): number {
  if (sigma === 0) return 0;
  for (;;) {
    const drawn = sigma * Math.sqrt(degreesOfFreedom / chance.chiSquare(degreesOfFreedom));
    if (drawn < 0.5) return drawn;
  }
}

function slopeOf({ drift = 'none', told, truth }: Scene, chance: Chance): number {
  if (drift === 'none') return 0;
  if (drift !== 'drawn') return told.driftPerHour.sigma * drift * (chance.uniform() < 0.5 ? -1 : 1);
  const sigma = truth === 'drawn' ? drawnSigma(told.driftPerHour, chance) : told.driftPerHour.sigma;
  return sigma * chance.normal();
}

/** What soaking heat has taken by so many hours after the first counted pull. Warm-ups are a quarter of an hour each. */
function soaked({ soak }: Scene, hours: number): number {
  return soak ? soak.share * (1 - Math.exp(-(hours + soak.warmUps * 0.25) / soak.hours)) : 0;
}

function gainAt(gain: TrueGain, speed: number): number {
  switch (gain) {
    case 'none':
      return 0;
    case 'steady':
      return 0.02;
    case 'one-per-cent':
      return 0.01;
    case 'above-4200':
      return Math.min(0.03, Math.max(0, (speed - 4200) * 3e-5));
    case 'crossing':
      return 0.025 * Math.tanh((speed - 4450) / 900);
  }
}

/** One value for each name, made when it is first asked for. */
function once(make: (name: string) => number): (name: string) => number {
  const made = new Map<string, number>();
  return (name) => {
    const known = made.get(name) ?? make(name);
    made.set(name, known);
    return known;
  };
}
